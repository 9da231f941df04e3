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
 */
public record Alignment(double startFrame, double step, List<Double> gains, double levelChangeDb) {

    /** Copies the list. */
    public Alignment {
        gains = List.copyOf(gains);
    }

    /** By how much it came back fast, parts in a million. */
    public double fastPpm() {
        return 1e6 * (1 / step - 1);
    }
}
