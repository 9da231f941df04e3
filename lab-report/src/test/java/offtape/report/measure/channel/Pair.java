package offtape.report.measure.channel;

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
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.tone.ReferenceLevels;

/**
 * Parts of a programme as they come back on two channels by plain arithmetic: gains, a delay of
 * whole frames, leaks between the replay heads, white noise. In place and at nominal speed.
 */
final class Pair {

    static final int RATE = 32_000;

    /** Length of the sweeps. */
    static final double SWEEP_S = 1;

    /** One frame late, µs. */
    static final double FRAME_US = 1e6 / RATE;

    static final Cue.Silence SILENCE =
            new Cue.Silence("silence", ChannelSet.BOTH, at(0.1), at(0.9));
    static final Cue.Tone REFERENCE = tone("reference", ChannelSet.BOTH, 1.1, 0.5, 1000);
    static final Cue.Sweep SWEEP = sweep("sweep", ChannelSet.BOTH, 1.7, 80, 14_000, -20);
    static final Cue.Tone LEFT_TONE = tone("left", ChannelSet.LEFT, 2.8, 0.4, 1000);
    static final Cue.Tone RIGHT_TONE = tone("right", ChannelSet.RIGHT, 3.3, 0.4, 1000);
    static final Cue.Sweep LEFT_SWEEP = sweep("l-sweep", ChannelSet.LEFT, 3.9, 80, 14_000, -10);
    static final Cue.Sweep RIGHT_SWEEP = sweep("r-sweep", ChannelSet.RIGHT, 5.0, 80, 14_000, -10);

    private final Programme programme;
    private double gainLeft = 1;
    private double gainRight = 1;
    private int late;
    private double leftIntoRight;
    private double rightIntoLeft;
    private int leaksLate;
    private double noise;
    private boolean swapped;

    private Pair(Programme programme) {
        this.programme = programme;
    }

    /** A programme of these parts. */
    static Pair of(Cue... cues) {
        long frames = cues[cues.length - 1].endFrame() + RATE / 4;
        CueSheet sheet = new CueSheet(RATE, frames, -18, 190.5, List.of(cues));
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) frames);
        return new Pair(new Programme(sheet, new MemoryAudio("programme", RATE, sound)));
    }

    static long at(double seconds) {
        return Math.round(seconds * RATE);
    }

    static Cue.Tone tone(String id, ChannelSet side, double at, double seconds, double hz) {
        return new Cue.Tone(id, side, at(at), at(seconds), hz, 0);
    }

    static Cue.Sweep sweep(
            String id, ChannelSet side, double at, double from, double to, double db) {
        return new Cue.Sweep(id, side, at(at), at(SWEEP_S), from, to, db);
    }

    Pair gains(double left, double right) {
        gainLeft = left;
        gainRight = right;
        return this;
    }

    /** Frames by which the right channel is late. */
    Pair late(int frames) {
        late = frames;
        return this;
    }

    /** What each channel hears of the other one's return. */
    Pair leaks(double ofLeftIntoRight, double ofRightIntoLeft) {
        leftIntoRight = ofLeftIntoRight;
        rightIntoLeft = ofRightIntoLeft;
        return this;
    }

    /** Frames by which the leaks are later than their sources. */
    Pair leaksLate(int frames) {
        leaksLate = frames;
        return this;
    }

    /** Standard deviation of the noise of each channel, full-scale units. */
    Pair noise(double deviation) {
        noise = deviation;
        return this;
    }

    /** The channels of the recording exchanged. */
    Pair swapped() {
        swapped = true;
        return this;
    }

    ProgrammeReturn play() {
        double[][] sent = programme.audio().read(0, (int) programme.audio().frames());
        int n = sent[0].length;
        double[][] x = new double[2][n];
        Random random = new Random(21);
        for (int i = 0; i < n; i++) {
            x[0][i] = left(sent, i) + rightIntoLeft * right(sent, i - leaksLate);
            x[1][i] = right(sent, i) + leftIntoRight * left(sent, i - leaksLate);
            x[0][i] += noise * random.nextGaussian();
            x[1][i] += noise * random.nextGaussian();
        }
        return there(programme, swapped ? new double[][] {x[1], x[0]} : x);
    }

    private double left(double[][] sent, int i) {
        return i < 0 ? 0 : gainLeft * sent[0][i];
    }

    private double right(double[][] sent, int i) {
        return i < late || i - late >= sent[1].length ? 0 : gainRight * sent[1][i - late];
    }

    /** A recording that ends early. */
    ProgrammeReturn playUntil(double seconds) {
        return there(programme, play().recording().read(0, (int) at(seconds)));
    }

    /** A recording of the left channel alone. */
    ProgrammeReturn playLeft() {
        ProgrammeReturn both = play();
        return there(programme, both.recording().read(0, (int) both.recording().frames())[0]);
    }

    private static ProgrammeReturn there(Programme programme, double[]... x) {
        double seconds = (double) x[0].length / RATE;
        Location place =
                new Location(
                        TimeMap.straight(0, 1, seconds),
                        seconds,
                        0,
                        0,
                        List.of(1, -1),
                        true,
                        true,
                        0,
                        seconds,
                        List.of());
        return new ProgrammeReturn(programme, new MemoryAudio("return", RATE, x), place);
    }

    static FollowedSweep follow(ProgrammeReturn ret, Cue.Sweep sweep) {
        return new SweepFollower(sweep, RATE).follow(ret);
    }

    static NoiseDensities noiseOf(ProgrammeReturn ret) {
        return NoiseDensities.measure(ret).orElse(null);
    }

    static CrosstalkMeasure crosstalk(ProgrammeReturn ret) {
        return new CrosstalkMeasure(ret, ReferenceLevels.measure(ret).orElse(null));
    }
}
