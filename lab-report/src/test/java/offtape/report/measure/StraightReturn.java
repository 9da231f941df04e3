package offtape.report.measure;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.Take;
import offtape.report.locate.TimeMap;

/** A short programme and returns of it written by formula, whose place is known. */
final class StraightReturn {

    static final int RATE = 8000;

    /** Marker, two tones of 1 kHz and one of 2.5 kHz, marker; twenty seconds with silence. */
    static final CueSheet SHEET = sheet(null);

    static final double SECONDS = SHEET.seconds(SHEET.frames());

    private static final Programme PROGRAMME = programme(SHEET);

    private StraightReturn() {}

    static CueSheet sheet(Double tapeSpeedMmPerS) {
        return new CueSheet(
                RATE,
                20 * RATE,
                -18,
                tapeSpeedMmPerS,
                List.of(
                        new Cue.Marker("start", ChannelSet.BOTH, RATE / 2, RATE / 2),
                        tone("first", 2, 1000),
                        tone("second", 4, 1000),
                        tone("high", 6, 2500),
                        new Cue.Marker("end", ChannelSet.BOTH, 18 * RATE, RATE / 2)));
    }

    private static Cue.Tone tone(String id, int atSeconds, double hz) {
        return new Cue.Tone(id, ChannelSet.BOTH, (long) atSeconds * RATE, 3L * RATE / 2, hz, -20);
    }

    static Cue.Tone tone(String id) {
        return SHEET.cues(Cue.Tone.class).filter(t -> t.id().equals(id)).findFirst().orElseThrow();
    }

    /** The programme's own samples, of one channel. */
    static double[] sound() {
        return PROGRAMME.audio().read(0, (int) SHEET.frames())[0].clone();
    }

    /** A return that begins with the programme's first frame. */
    static ProgrammeReturn of(double[]... channels) {
        return in(new MemoryAudio("return.wav", RATE, channels), place(0, 1, SECONDS));
    }

    static ProgrammeReturn in(AudioSource recording, Location place) {
        return new ProgrammeReturn(PROGRAMME, recording, place);
    }

    static Programme programme(CueSheet sheet) {
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        return new Programme(sheet, new MemoryAudio("programme", RATE, sound));
    }

    /**
     * All heard, one take.
     *
     * @param offsetSeconds where the programme's first frame lies
     * @param stretch length in the recording over length in the programme
     * @param seconds length of the recording
     */
    static Location place(double offsetSeconds, double stretch, double seconds) {
        return place(offsetSeconds, stretch, seconds, true, true, List.of());
    }

    static Location place(
            double offsetSeconds,
            double stretch,
            double seconds,
            boolean isStartHeard,
            boolean isEndHeard,
            List<Take> takes) {
        return new Location(
                TimeMap.straight(offsetSeconds, stretch, SECONDS),
                seconds,
                offsetSeconds,
                0,
                List.of(1, 1),
                isStartHeard,
                isEndHeard,
                0,
                seconds,
                takes);
    }
}
