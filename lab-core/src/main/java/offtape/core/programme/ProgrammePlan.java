package offtape.core.programme;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.TapeSpeed;

/**
 * Lays out the test programme: which parts, in which order, how long and how loud.
 *
 * @param tapeSpeed nominal tape speed; slow tape takes 315 Hz in place of 1 kHz
 * @param sampleRateHz 44 100 to 192 000
 * @param referenceDbfs level of the reference tone, dB re a full-scale sine
 * @param brief true for the short programme for quick looks
 */
public record ProgrammePlan(
        TapeSpeed tapeSpeed, int sampleRateHz, double referenceDbfs, boolean brief) {

    private static final Sentences SAID = Sentences.near(ProgrammePlan.class);

    /** The reference level if the user names none: leaves 4 dB above the loudest ladder step. */
    public static final double DEFAULT_REFERENCE_DBFS = -18;

    /** The highest level of the programme, dB re reference: the top of the ladders. */
    public static final int TOP_LADDER_DB = 14;

    private static final int BOTTOM_LADDER_DB = -20;
    private static final int LADDER_STEP_DB = 2;
    private static final double SWEEP_START_HZ = 16;
    private static final double HIGHEST_SWEEP_END_HZ = 22_000;

    /** Keeps the end of a sweep below half the rate even if the tape runs 3 % fast. */
    private static final double SWEEP_END_OF_RATE = 0.46;

    private static final double GAP_S = 0.3;

    /**
     * What lies before the first marker. Short, since wow in it cannot be seen, and long enough
     * that a recording trimmed to where sound begins keeps the marker.
     */
    private static final double LEAD_S = 0.02;

    private static final double[] CHECK_TONES_HZ = {
        40, 63, 125, 250, 500, 1000, 2000, 4000, 6300, 8000, 10_000, 12_500, 16_000
    };
    private static final double[] BRIEF_CHECK_TONES_HZ = {63, 1000, 6300, 10_000, 12_500};

    /** Refuses rates and levels that the programme cannot keep. */
    public ProgrammePlan {
        if (sampleRateHz < 44_100 || sampleRateHz > 192_000) {
            throw new IllegalArgumentException(SAID.say("plan.rate", sampleRateHz));
        }
        if (!(referenceDbfs >= -40 && referenceDbfs <= -TOP_LADDER_DB)) {
            throw new IllegalArgumentException(
                    SAID.say("plan.reference", TOP_LADDER_DB, TOP_LADDER_DB));
        }
    }

    /** Frequency of the reference tone and the ladder: 1 kHz, or 315 Hz on slow tape. */
    public double midHz() {
        return tapeSpeed.isSlow() ? 315 : 1000;
    }

    /** The finished cue sheet. */
    public CueSheet sheet() {
        Tape t = new Tape();
        t.gap(LEAD_S);
        t.marker(ProgrammeSignal.START_MARKER);
        t.tone("reference", ChannelSet.BOTH, brief ? 2 : 5, midHz(), 0);
        t.tone("lineup-low", ChannelSet.BOTH, brief ? 0.8 : 3, 100, -20);
        t.tone("lineup-mid", ChannelSet.BOTH, brief ? 0.8 : 3, 1000, -20);
        t.tone("lineup-high", ChannelSet.BOTH, brief ? 0.8 : 3, 10_000, -20);
        t.silence("silence", brief ? 4 : 10);
        t.sweep("sweep-low", ChannelSet.BOTH, brief ? 6 : 12, -20);
        t.sweep("sweep-reference", ChannelSet.BOTH, brief ? 6 : 12, 0);
        t.ladder("ladder-mid", midHz(), brief ? 0.6 : 1.5);
        t.ladder("ladder-high", 10_000, brief ? 0.25 : 0.8);
        for (ChannelSet side : List.of(ChannelSet.LEFT, ChannelSet.RIGHT)) {
            t.tone(side.key() + "-only", side, brief ? 1 : 3, 1000, 0);
            if (!brief) {
                t.sweep(side.key() + "-only-sweep", side, 5, -10);
            }
        }
        for (double f : brief ? BRIEF_CHECK_TONES_HZ : CHECK_TONES_HZ) {
            t.tone("check-" + Math.round(f), ChannelSet.BOTH, brief ? 0.4 : 0.8, f, -20);
        }
        t.tone("speed", ChannelSet.BOTH, brief ? 20 : 65, 3150, 0);
        t.gap(0.2);
        t.marker(ProgrammeSignal.END_MARKER);
        t.gap(0.2);
        return new CueSheet(sampleRateHz, t.frame, referenceDbfs, tapeSpeed.mmPerS(), t.cues);
    }

    /** Appends cue after cue. */
    private final class Tape {
        private final List<Cue> cues = new ArrayList<>();
        private long frame;

        private long frames(double seconds) {
            return Math.round(seconds * sampleRateHz);
        }

        private void gap(double seconds) {
            frame += frames(seconds);
        }

        private void append(Cue cue) {
            cues.add(cue);
            frame = cue.endFrame();
            gap(GAP_S);
        }

        private void marker(String id) {
            append(new Cue.Marker(id, ChannelSet.BOTH, frame, frames(ProgrammeSignal.MARKER_S)));
        }

        private void tone(String id, ChannelSet on, double seconds, double hz, double levelDb) {
            append(new Cue.Tone(id, on, frame, frames(seconds), hz, levelDb));
        }

        private void silence(String id, double seconds) {
            append(new Cue.Silence(id, ChannelSet.BOTH, frame, frames(seconds)));
        }

        private void sweep(String id, ChannelSet on, double seconds, double levelDb) {
            double endHz = Math.min(HIGHEST_SWEEP_END_HZ, SWEEP_END_OF_RATE * sampleRateHz);
            append(new Cue.Sweep(id, on, frame, frames(seconds), SWEEP_START_HZ, endHz, levelDb));
        }

        private void ladder(String id, double hz, double stepSeconds) {
            long start = frame;
            List<Cue.Step> steps = new ArrayList<>();
            for (int db = BOTTOM_LADDER_DB; db <= TOP_LADDER_DB; db += LADDER_STEP_DB) {
                steps.add(new Cue.Step(frame, frames(stepSeconds), db));
                frame += frames(stepSeconds + 0.1);
            }
            Cue.Step last = steps.get(steps.size() - 1);
            long length = last.startFrame() + last.frames() - start;
            append(new Cue.Ladder(id, ChannelSet.BOTH, start, length, hz, steps));
        }
    }
}
