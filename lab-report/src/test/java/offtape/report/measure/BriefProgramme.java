package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.output.Sha256;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.CueSheetJson;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.Location;
import offtape.report.locate.MarkerSight;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;

/** Programmes of a few seconds, part by part, and their returns at a place that is known. */
final class BriefProgramme {

    static final int RATE = 8000;

    private static final double NOISE = 1e-4;

    private final List<Cue> cues = new ArrayList<>();
    private long at = RATE / 4;

    /** A second of nothing. */
    BriefProgramme silence() {
        return add(new Cue.Silence("silence", ChannelSet.BOTH, at, RATE));
    }

    /** Two and a half seconds of 1 kHz at reference level: reference and speed tone in one. */
    BriefProgramme reference() {
        return tone(1000, 5 * RATE / 2);
    }

    /** Half a second. */
    BriefProgramme marker() {
        return add(new Cue.Marker("marker" + cues.size(), ChannelSet.BOTH, at, RATE / 2));
    }

    BriefProgramme tone(double hz, long frames) {
        return tone(hz, frames, 0);
    }

    BriefProgramme tone(double hz, long frames, double levelDb) {
        return add(new Cue.Tone("tone" + cues.size(), ChannelSet.BOTH, at, frames, hz, levelDb));
    }

    /** A second from 50 Hz to 3.5 kHz. */
    BriefProgramme sweep(ChannelSet channels, double levelDb) {
        return add(new Cue.Sweep("sweep" + cues.size(), channels, at, RATE, 50, 3500, levelDb));
    }

    /** Half a second each of 1 kHz at −6 and 0 dB. */
    BriefProgramme ladder() {
        long step = RATE / 2;
        List<Cue.Step> steps =
                List.of(new Cue.Step(at, step, -6), new Cue.Step(at + step, step, 0));
        return add(new Cue.Ladder("ladder", ChannelSet.BOTH, at, 2 * step, 1000, steps));
    }

    /** Half a second of 1 kHz on one channel. */
    BriefProgramme alone(ChannelSet channel) {
        return add(new Cue.Tone(channel.key(), channel, at, RATE / 2, 1000, 0));
    }

    private BriefProgramme add(Cue cue) {
        cues.add(cue);
        at = cue.endFrame() + RATE / 4;
        return this;
    }

    /** The programme as it is now. */
    Programme made() {
        CueSheet sheet = new CueSheet(RATE, at, -18, null, cues);
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        return new Programme(sheet, new MemoryAudio("programme", RATE, sound));
    }

    /** How sessions name the programme. */
    static String digest(Programme programme) {
        return Sha256.ofText(CueSheetJson.write(programme.sheet()));
    }

    /** The programme's own samples on both channels, each times a gain, in noise. */
    static double[][] sound(Programme programme, double left, double right) {
        double[][] x = programme.audio().read(0, (int) programme.sheet().frames());
        Random random = new Random(7);
        double[][] out = new double[2][x[0].length];
        for (int i = 0; i < out[0].length; i++) {
            out[0][i] = left * x[0][i] + NOISE * random.nextGaussian();
            out[1][i] = right * x[1][i] + NOISE * random.nextGaussian();
        }
        return out;
    }

    /** A return that begins with the programme's first frame, upright on both channels. */
    static ProgrammeReturn returned(Programme programme, double[]... sound) {
        return returned(programme, 1, 0, sound);
    }

    /**
     * The same; all markers are heard.
     *
     * @param sign as which they came back on both channels: 1 upright, −1 inverted
     * @param lateSeconds how late all but the first are
     */
    static ProgrammeReturn returned(
            Programme programme, int sign, double lateSeconds, double[]... sound) {
        CueSheet sheet = programme.sheet();
        double seconds = sheet.seconds(sheet.frames());
        List<MarkerSight> markers =
                sheet.cues(Cue.Marker.class)
                        .map(m -> sheet.seconds(m.startFrame() + m.frames() / 2))
                        .map(m -> new MarkerSight(m, m < seconds / 2 ? 0 : lateSeconds, 1e-4))
                        .toList();
        return new ProgrammeReturn(
                programme,
                new MemoryAudio("return.wav", RATE, sound),
                new Location(
                        TimeMap.straight(0, 1, seconds),
                        seconds,
                        0,
                        0,
                        List.of(sign, sign),
                        true,
                        true,
                        0,
                        seconds,
                        List.of(),
                        markers));
    }
}
