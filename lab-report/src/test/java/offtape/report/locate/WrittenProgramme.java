package offtape.report.locate;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ExponentialSweep;
import offtape.core.programme.Programme;

/**
 * A programme all of whose sound is a formula of time, so that its return through any course of
 * speed is exact: what sounds at a time of the recording is the formula at the programme's time.
 */
final class WrittenProgramme {

    /** Enough for markers up to 4.5 kHz, and quick. */
    static final int RATE = 12_000;

    /** A marker glides from its high end to its low end and back. */
    private static final double MARKER_LOW_HZ = 600;

    private static final double MARKER_HIGH_HZ = 4500;

    private static final double PEAK = 0.1;

    private final CueSheet sheet;

    WrittenProgramme(double seconds, Cue... cues) {
        this.sheet = new CueSheet(RATE, frames(seconds), -20, null, List.of(cues));
    }

    /** Two markers, three tones and a sweep in nine seconds. */
    static WrittenProgramme brief() {
        return new WrittenProgramme(
                9,
                marker("start", 0.2),
                tone("first", 0.8, 1.4, 1000),
                tone("second", 2.3, 1.5, 3150),
                sweep("sweep", 4, 1.6, 50, 5000),
                tone("third", 5.8, 2, 500),
                marker("end", 8.2));
    }

    /** One part of each kind in sixteen seconds and a half, with silence between them. */
    static WrittenProgramme small() {
        return new WrittenProgramme(
                16.5,
                marker("start", 0.5),
                tone("reference", 1.25, 2, 1000),
                tone("high", 3.5, 1, 4000),
                sweep("sweep", 4.8, 3, 50, 5000),
                tone("low", 8.1, 1, 100),
                tone("speed", 9.4, 6, 3150),
                marker("end", 15.6));
    }

    static long frames(double seconds) {
        return Math.round(seconds * RATE);
    }

    static Cue.Marker marker(String id, double from) {
        return new Cue.Marker(id, ChannelSet.BOTH, frames(from), frames(0.5));
    }

    static Cue.Tone tone(String id, double from, double seconds, double hz) {
        return new Cue.Tone(id, ChannelSet.BOTH, frames(from), frames(seconds), hz, 0);
    }

    static Cue.Sweep sweep(String id, double from, double seconds, double startHz, double endHz) {
        return new Cue.Sweep(id, ChannelSet.BOTH, frames(from), frames(seconds), startHz, endHz, 0);
    }

    CueSheet sheet() {
        return sheet;
    }

    double seconds() {
        return sheet.seconds(sheet.frames());
    }

    /** The programme at a time, whole sample or not. */
    private double at(double seconds) {
        for (Cue cue : sheet.cues()) {
            double t = seconds - sheet.seconds(cue.startFrame());
            if (t >= 0 && t < sheet.seconds(cue.frames())) {
                return PEAK * Math.sin(phase(cue, t));
            }
        }
        return 0;
    }

    private double phase(Cue cue, double t) {
        if (cue instanceof Cue.Tone tone) {
            return 2 * Math.PI * tone.frequencyHz() * t;
        }
        if (cue instanceof Cue.Sweep sweep) {
            return ExponentialSweep.of(sweep, RATE).phaseRadians(t);
        }
        double half = sheet.seconds(cue.frames()) / 2;
        double bend = (MARKER_HIGH_HZ - MARKER_LOW_HZ) / (2 * half);
        double down = Math.min(t, half);
        double up = t - down;
        return 2
                * Math.PI
                * (MARKER_HIGH_HZ * down
                        - bend * down * down
                        + MARKER_LOW_HZ * up
                        + bend * up * up);
    }

    /** One channel of a recording, in which the programme's time is a function of its own. */
    double[] returned(double seconds, DoubleUnaryOperator programmeSeconds) {
        return returned(RATE, seconds, programmeSeconds);
    }

    /** The same at another sample rate. */
    double[] returned(int rate, double seconds, DoubleUnaryOperator programmeSeconds) {
        double[] x = new double[(int) Math.round(seconds * rate)];
        Arrays.setAll(x, i -> at(programmeSeconds.applyAsDouble((double) i / rate)));
        return x;
    }

    /** The same sound in hiss, 60 dB under the programme. */
    static double[] withHiss(double[] x) {
        Random random = new Random(4);
        double[] out = new double[x.length];
        Arrays.setAll(out, i -> x[i] + 1e-4 * random.nextGaussian());
        return out;
    }

    /**
     * One channel of a recording, lengthened as a workstation does: every part lasts longer, at its
     * own pitch.
     */
    double[] lengthened(double seconds, double offset, double longer) {
        double[] x = new double[(int) frames(seconds)];
        for (Cue cue : sheet.cues()) {
            int from = (int) frames(offset + longer * sheet.seconds(cue.startFrame()));
            int to = (int) frames(offset + longer * sheet.seconds(cue.endFrame()));
            for (int i = from; i < to; i++) {
                x[i] = PEAK * Math.sin(phase(cue, (double) (i - from) / RATE));
            }
        }
        return x;
    }

    /** The programme as it is sent. */
    Programme programme() {
        double[] x = returned(seconds(), t -> t);
        return new Programme(sheet, new MemoryAudio("programme", RATE, x, x));
    }

    /** A recording. */
    static MemoryAudio recording(double[]... channels) {
        return new MemoryAudio("return.wav", RATE, channels);
    }
}
