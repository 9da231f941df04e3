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

    private static final double GAP_S = 0.3;

    private final int rateHz;
    private final List<Cue> cues = new ArrayList<>();
    private long frame;

    private TrialSheet(int rateHz) {
        this.rateHz = rateHz;
    }

    /** The cue sheet for a tape speed and a sample rate, hertz. */
    static CueSheet of(TapeSpeed speed, int rateHz) {
        return new TrialSheet(rateHz).sheet(speed);
    }

    /** Frequency of reference tone and ladder: 315 Hz on slow tape, as in the full programme. */
    static double midHz(TapeSpeed speed) {
        return speed.isSlow() ? 315 : 1000;
    }

    private CueSheet sheet(TapeSpeed speed) {
        double midHz = midHz(speed);
        frame = frames(0.02);
        append(
                new Cue.Marker(
                        ProgrammeSignal.START_MARKER,
                        ChannelSet.BOTH,
                        frame,
                        frames(ProgrammeSignal.MARKER_S)));
        tone("reference", ChannelSet.BOTH, 2, midHz, 0);
        append(new Cue.Silence("silence", ChannelSet.BOTH, frame, frames(8)));
        double endHz = Math.min(22_000, 0.46 * rateHz);
        append(new Cue.Sweep("sweep", ChannelSet.BOTH, frame, frames(12), 16, endHz, -20));
        ladder(midHz);
        tone("left", ChannelSet.LEFT, 2, 1000, 0);
        tone("right", ChannelSet.RIGHT, 2, 1000, 0);
        frame = Math.max(frame, frames(SPEED_TONE_AT_S));
        tone("speed", ChannelSet.BOTH, 18, 3150, 0);
        append(
                new Cue.Marker(
                        ProgrammeSignal.END_MARKER,
                        ChannelSet.BOTH,
                        frame,
                        frames(ProgrammeSignal.MARKER_S)));
        return new CueSheet(rateHz, frame, -18.0, speed.mmPerS(), cues);
    }

    private void ladder(double hz) {
        long start = frame;
        List<Cue.Step> steps = new ArrayList<>();
        for (int db = -10; db <= 14; db += 3) {
            steps.add(new Cue.Step(frame, frames(1), db));
            frame += frames(1.1);
        }
        long length = steps.get(steps.size() - 1).startFrame() + frames(1) - start;
        append(new Cue.Ladder("ladder", ChannelSet.BOTH, start, length, hz, steps));
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
