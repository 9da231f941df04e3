package offtape.cli.sound;

import java.util.List;

/**
 * One direction of a device, as found by opening it.
 *
 * @param channels most channels that opened
 * @param sampleRatesHz rates that opened with two channels or the most, rising
 * @param bits widths of samples that opened, rising
 * @param hint what keeps it from opening and what to do, or null if it opens
 */
public record DeviceSide(
        int channels, List<Integer> sampleRatesHz, List<Integer> bits, String hint) {

    /** Copies the lists. */
    public DeviceSide {
        sampleRatesHz = List.copyOf(sampleRatesHz);
        bits = List.copyOf(bits);
    }

    /** Whether it opened in any format. */
    public boolean opens() {
        return !sampleRatesHz.isEmpty();
    }
}
