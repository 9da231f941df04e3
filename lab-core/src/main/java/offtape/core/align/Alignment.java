package offtape.core.align;

import java.util.List;

/**
 * How a sound came back: where it lies in a recording, how fast and how loud.
 *
 * @param startFrame where its first frame lies in the recording, fractional
 * @param step frames of the recording a frame of the sound: below 1 if it came back fast
 * @param gains of the path on each channel, as factors; negative where it came back inverted
 * @param levelChangeDb by how much the second mark was louder than the first on the channel where
 *     that differs most, dB
 * @param isBroken whether sound was lost or put in on the way: the marks came back at another
 *     distance than their own speed says
 */
public record Alignment(
        double startFrame,
        double step,
        List<Double> gains,
        double levelChangeDb,
        boolean isBroken) {

    /** Copies the list. */
    public Alignment {
        gains = List.copyOf(gains);
    }

    /** By how much it came back fast, parts in a million. */
    public double fastPpm() {
        return 1e6 * (1 / step - 1);
    }

    /** The same place with the level left as it came back: only polarity is to be taken back. */
    public Alignment levelled() {
        List<Double> signs = gains.stream().map(Math::signum).toList();
        return new Alignment(startFrame, step, signs, levelChangeDb, isBroken);
    }

    /** Whether the path changed nothing but time by whole frames, and polarity. */
    public boolean isExact() {
        return step == 1
                && startFrame == Math.rint(startFrame)
                && gains.stream().allMatch(g -> Math.abs(g) == 1);
    }
}
