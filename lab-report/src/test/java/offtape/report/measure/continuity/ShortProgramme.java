package offtape.report.measure.continuity;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;

/**
 * A programme of 14 s with every kind of part, and returns of it. A return at another speed is the
 * programme with its times and frequencies scaled, so nothing is interpolated.
 */
final class ShortProgramme {

    static final int RATE = 16_000;

    /** Seconds of noise before the programme. */
    static final double BEFORE_S = 1;

    private static final double SECONDS = 14;
    private static final Programme PROGRAMME = new Programme(sheet(1), sound(sheet(1)));

    private ShortProgramme() {}

    private static CueSheet sheet(double speed) {
        Parts parts = new Parts(speed);
        parts.add(
                new Cue.Marker("start", ChannelSet.BOTH, parts.frames(0.25), parts.frames(0.5)),
                parts.tone("reference", 1.0, 1.0, 1000),
                new Cue.Silence("silence", ChannelSet.BOTH, parts.frames(2.03), parts.frames(0.24)),
                parts.ladder(2.3, 0.6, 0.8, 2000),
                new Cue.Sweep(
                        "sweep",
                        ChannelSet.BOTH,
                        parts.frames(4.8),
                        parts.frames(3),
                        100 * speed,
                        7000 * speed,
                        0),
                parts.tone("speed", 8.1, 2, 3150),
                parts.tone("low", 10.4, 1.2, 400),
                parts.tone("high", 11.9, 0.6, 5000),
                new Cue.Marker("end", ChannelSet.BOTH, parts.frames(12.8), parts.frames(0.5)));
        return new CueSheet(RATE, parts.frames(SECONDS), -18, null, parts.cues);
    }

    /** Parts of a programme as long and as high as a speed makes them. */
    private static final class Parts {

        private final double speed;
        private final List<Cue> cues = new ArrayList<>();

        Parts(double speed) {
            this.speed = speed;
        }

        void add(Cue... more) {
            cues.addAll(List.of(more));
        }

        long frames(double seconds) {
            return Math.round(seconds / speed * RATE);
        }

        Cue tone(String id, double at, double seconds, double hz) {
            return new Cue.Tone(id, ChannelSet.BOTH, frames(at), frames(seconds), hz * speed, 0);
        }

        Cue ladder(double at, double seconds, double every, double hz) {
            List<Cue.Step> steps = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                steps.add(new Cue.Step(frames(at + i * every), frames(seconds), -12 + 6 * i));
            }
            long length = frames(2 * every + seconds);
            return new Cue.Ladder("ladder", ChannelSet.BOTH, frames(at), length, hz * speed, steps);
        }
    }

    private static MemoryAudio sound(CueSheet sheet) {
        double[][] x = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        return new MemoryAudio("programme", RATE, x);
    }

    /**
     * A recording of it with noise 80 dB under full scale throughout.
     *
     * @param speed tape speed over nominal
     * @param gainRight gain of the right channel
     */
    static MemoryAudio heard(double speed, double gainRight) {
        CueSheet sheet = sheet(speed);
        double[][] sent = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        int before = (int) (BEFORE_S * RATE);
        double[][] x = new double[2][before + sent[0].length];
        Random random = new Random(42);
        for (int i = 0; i < x[0].length; i++) {
            for (int c = 0; c < 2; c++) {
                double gain = c == 0 ? 0.5 : gainRight;
                x[c][i] =
                        1e-4 * random.nextGaussian()
                                + (i < before ? 0 : gain * sent[c][i - before]);
            }
        }
        return new MemoryAudio("return", RATE, x);
    }

    /** What a player or a recorder that is late does at a moment. */
    static MemoryAudio broken(MemoryAudio whole, double atSeconds, double addedSeconds) {
        int frames = (int) whole.frames();
        int rate = whole.sampleRateHz();
        int at = (int) Math.round(atSeconds * rate);
        int added = (int) Math.round(addedSeconds * rate);
        double[][] x = whole.read(0, frames);
        double[][] y = new double[x.length][frames + added];
        for (int c = 0; c < x.length; c++) {
            System.arraycopy(x[c], 0, y[c], 0, at);
            int from = at + Math.max(0, -added);
            System.arraycopy(x[c], from, y[c], at + Math.max(0, added), frames - from);
        }
        return new MemoryAudio("return", rate, y);
    }

    /** A recording with the programme where it would be if it were whole. */
    static ProgrammeReturn there(MemoryAudio heard, double speed) {
        return there(PROGRAMME, heard, BEFORE_S, speed);
    }

    /** A recording with a programme from a moment on at a speed. */
    static ProgrammeReturn there(
            Programme programme, MemoryAudio heard, double fromSeconds, double speed) {
        double seconds = (double) heard.frames() / heard.sampleRateHz();
        double length = programme.sheet().seconds(programme.sheet().frames());
        return new ProgrammeReturn(
                programme,
                heard,
                new Location(
                        TimeMap.straight(fromSeconds, 1 / speed, length),
                        seconds,
                        fromSeconds,
                        0.001,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        seconds,
                        List.of()));
    }

    /** Of a few parts alone. */
    static Programme of(double seconds, Cue... cues) {
        CueSheet sheet = new CueSheet(RATE, Math.round(seconds * RATE), -18, null, List.of(cues));
        return new Programme(sheet, sound(sheet));
    }
}
