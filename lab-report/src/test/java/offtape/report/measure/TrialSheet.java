package offtape.report.measure;

import java.util.ArrayList;
import java.util.List;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.TapeSpeed;

/**
 * A programme of one minute that holds each kind of part once, for trials on many machines: the
 * parts that a figure of the accuracy table is read from are as long as in the full programme, but
 * for the speed tone.
 */
final class TrialSheet {

    /** Where the speed tone begins, seconds. */
    static final double SPEED_TONE_AT_S = 41.6;

    /**
     * How long its parts are, seconds.
     *
     * @param step of each tone of a ladder
     * @param alone of the tones on one channel
     * @param speedAt no earlier than this begins the speed tone
     * @param highs whether there is a ladder of 10 kHz too
     */
    record Lengths(
            double reference,
            double silence,
            double sweep,
            double step,
            double alone,
            double speed,
            double speedAt,
            boolean highs) {}

    private static final Lengths ACCURACY = new Lengths(2, 8, 12, 1, 2, 18, SPEED_TONE_AT_S, false);

    private static final double HIGHS_HZ = 10_000;
    private static final double GAP_S = 0.3;

    private final int rateHz;
    private final List<Cue> cues = new ArrayList<>();
    private long frame;

    private TrialSheet(int rateHz) {
        this.rateHz = rateHz;
    }

    /** The cue sheet for a tape speed and a sample rate, hertz. */
    static CueSheet of(TapeSpeed speed, int rateHz) {
        return of(speed, rateHz, ACCURACY);
    }

    /** The same with parts of other lengths. */
    static CueSheet of(TapeSpeed speed, int rateHz, Lengths lengths) {
        return new TrialSheet(rateHz).sheet(speed, lengths);
    }

    /** Frequency of reference tone and ladder: 315 Hz on slow tape, as in the full programme. */
    static double midHz(TapeSpeed speed) {
        return speed.isSlow() ? 315 : 1000;
    }

    private CueSheet sheet(TapeSpeed speed, Lengths lengths) {
        double midHz = midHz(speed);
        frame = frames(0.02);
        append(
                new Cue.Marker(
                        ProgrammeSignal.START_MARKER,
                        ChannelSet.BOTH,
                        frame,
                        frames(ProgrammeSignal.MARKER_S)));
        tone("reference", ChannelSet.BOTH, lengths.reference(), midHz, 0);
        append(new Cue.Silence("silence", ChannelSet.BOTH, frame, frames(lengths.silence())));
        double endHz = Math.min(22_000, 0.46 * rateHz);
        append(
                new Cue.Sweep(
                        "sweep", ChannelSet.BOTH, frame, frames(lengths.sweep()), 16, endHz, -20));
        ladder("ladder", midHz, lengths.step());
        if (lengths.highs()) {
            ladder("ladder-high", HIGHS_HZ, lengths.step());
        }
        tone("left", ChannelSet.LEFT, lengths.alone(), 1000, 0);
        tone("right", ChannelSet.RIGHT, lengths.alone(), 1000, 0);
        frame = Math.max(frame, frames(lengths.speedAt()));
        tone("speed", ChannelSet.BOTH, lengths.speed(), 3150, 0);
        append(
                new Cue.Marker(
                        ProgrammeSignal.END_MARKER,
                        ChannelSet.BOTH,
                        frame,
                        frames(ProgrammeSignal.MARKER_S)));
        return new CueSheet(rateHz, frame, -18.0, speed.mmPerS(), cues);
    }

    private void ladder(String id, double hz, double stepSeconds) {
        long start = frame;
        List<Cue.Step> steps = new ArrayList<>();
        for (int db = -10; db <= 14; db += 3) {
            steps.add(new Cue.Step(frame, frames(stepSeconds), db));
            frame += frames(stepSeconds + 0.1);
        }
        Cue.Step last = steps.get(steps.size() - 1);
        long length = last.startFrame() + last.frames() - start;
        append(new Cue.Ladder(id, ChannelSet.BOTH, start, length, hz, steps));
    }

    private void tone(String id, ChannelSet on, double seconds, double hz, double levelDb) {
        append(new Cue.Tone(id, on, frame, frames(seconds), hz, levelDb));
    }

    private void append(Cue cue) {
        cues.add(cue);
        frame = cue.endFrame() + frames(GAP_S);
    }

    private long frames(double seconds) {
        return Math.round(seconds * rateHz);
    }
}
