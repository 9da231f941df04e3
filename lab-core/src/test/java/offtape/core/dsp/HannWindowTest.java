package offtape.core.dsp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.junit.jupiter.api.Test;

class HannWindowTest {

    /** By hand: ½ − ½·cos(π/4) = ½ − √2/4 and ½ − ½·cos(3π/4) = ½ + √2/4, and their mirror. */
    @Test
    void fourSamples() {
        double low = 0.5 - Math.sqrt(2) / 4;
        double high = 0.5 + Math.sqrt(2) / 4;
        assertArrayEquals(new double[] {low, high, high, low}, HannWindow.of(4), 1e-15);
    }

    @Test
    void appliesFromAPlaceAndLeavesTheSoundAlone() {
        double[] sound = {9, 1, 2, 3, 9};
        double[] shaped = HannWindow.applied(new double[] {0.5, 1, 2}, sound, 1);
        assertArrayEquals(new double[] {0.5, 2, 6}, shaped);
        assertArrayEquals(new double[] {9, 1, 2, 3, 9}, sound);
    }
}
