package offtape.core.programme;

import java.util.List;

/** One part of the test programme. Frames count from the start of the programme. */
public sealed interface Cue {

    /** Name of the cue, unique in its sheet. */
    String id();

    /** The channels on which it sounds. */
    ChannelSet channels();

    /** First frame. */
    long startFrame();

    /** Length in frames, at least 1. */
    long frames();

    /** First frame after the cue. */
    default long endFrame() {
        return startFrame() + frames();
    }

    /** A signal of sharp autocorrelation that fixes the place of the programme. */
    record Marker(String id, ChannelSet channels, long startFrame, long frames) implements Cue {}

    /**
     * A steady tone.
     *
     * @param frequencyHz frequency in hertz
     * @param levelDb level re reference, dB
     */
    record Tone(
            String id,
            ChannelSet channels,
            long startFrame,
            long frames,
            double frequencyHz,
            double levelDb)
            implements Cue {}

    /**
     * An exponential sweep.
     *
     * @param startHz frequency at its first frame, hertz
     * @param endHz frequency at its end, hertz, above {@code startHz}
     * @param levelDb level re reference, dB
     */
    record Sweep(
            String id,
            ChannelSet channels,
            long startFrame,
            long frames,
            double startHz,
            double endHz,
            double levelDb)
            implements Cue {}

    /**
     * Steady tones of one frequency, one a step.
     *
     * @param frequencyHz frequency in hertz
     * @param steps the tones, at least one
     */
    record Ladder(
            String id,
            ChannelSet channels,
            long startFrame,
            long frames,
            double frequencyHz,
            List<Step> steps)
            implements Cue {

        /** Copies the list so that the cue cannot change. */
        public Ladder {
            steps = List.copyOf(steps);
        }
    }

    /**
     * One tone of a ladder.
     *
     * @param startFrame first frame, from the start of the programme
     * @param frames length in frames
     * @param levelDb level re reference, dB
     */
    record Step(long startFrame, long frames, double levelDb) {}

    /** Nothing is recorded. */
    record Silence(String id, ChannelSet channels, long startFrame, long frames) implements Cue {}
}
