package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import offtape.core.unit.Quantity;
import offtape.report.measure.sweep.Leakage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The wander of a delay that sways as a sine: its rms is its peak over √2, it spans two peaks. */
class DelayWanderTest {

    private static final Leakage NONE = new Leakage(Leakage.Leak.NONE, Leakage.Leak.NONE);

    private static InterchannelDelay whole(double microseconds, boolean opposite) {
        Quantity delay = Quantity.known(microseconds, "µs", 0.1);
        Quantity zero = Quantity.known(0, "µs", 0.1);
        return new InterchannelDelay(delay, zero, zero, opposite);
    }

    private static DelayWander read(LongTone tone, double microseconds, boolean opposite) {
        return DelayWander.of(tone.play(4), NONE, whole(microseconds, opposite));
    }

    @ParameterizedTest
    @CsvSource({
        "3150, 10, 1, 2.5, 1",
        "3150, 10, 0.02, 2, 1",
        "3150, -180, 5, 7, -1",
        "10000, 300, 20, 1, 1",
        "1000, -60, 3, 12, 1"
    })
    void aSineHasItsRmsItsSpanAndItsMean(
            double hz, double mean, double peak, double rate, double gain) {
        LongTone tone =
                new LongTone(24_000, hz, 20)
                        .hiss(-58)
                        .wow(0.3, 4)
                        .skew(mean, peak, rate)
                        .rightGain(gain);
        DelayWander wander = read(tone, mean, gain < 0);
        assertEquals(peak / Math.sqrt(2), wander.rms().value(), wander.rms().uncertainty());
        assertEquals(2 * peak, wander.peakToPeak().value(), wander.peakToPeak().uncertainty());
        assertTrue(wander.rms().uncertainty() < 0.1 * wander.rms().value());
        double[] trace = wander.trace().microseconds();
        double middle = Arrays.stream(trace).average().orElseThrow();
        assertEquals(mean, middle, 0.02 * peak + 0.01);
    }

    /** Wow moves both channels alike; a wavelength on tape stays as long. */
    @ParameterizedTest
    @CsvSource({"-58, 0.3, 4, 200", "-45, 0.5, 0.7, 30", "-300, 0.3, 9, 100"})
    void noWanderIsReadOutOfHissAndWow(double hiss, double percent, double rate, double mean) {
        LongTone tone =
                new LongTone(24_000, 3150, 12).hiss(hiss).wow(percent, rate).skew(mean, 0, 1);
        DelayWander wander = read(tone, mean, false);
        assertFalse(wander.rms().isKnown(), () -> wander.rms().toString());
        assertTrue(wander.rms().reason().contains("less than 0.0"), wander.rms().reason());
    }

    /**
     * The lower a tone is, the less lies beside it where nothing but noise is heard. One replay in
     * forty passes a bound of two standard deviations, so that of 24 four or more do by a chance of
     * 0.3 %.
     */
    @ParameterizedTest
    @ValueSource(doubles = {300, 360, 420, 480, 1000})
    void noWanderIsReadOutOfHissBesideALowTone(double hz) {
        int read = 0;
        for (int seed = 1; seed <= 24; seed++) {
            LongTone tone = new LongTone(6000, hz, seed % 2 == 0 ? 5 : 12).hiss(-45);
            boolean isKnown =
                    DelayWander.of(tone.play(seed), NONE, whole(0, false)).rms().isKnown();
            read += isKnown ? 1 : 0;
        }
        assertTrue(read <= 3, read + " of 24");
    }

    /** While a channel drops out its phase is noise; that is no skew. */
    @Test
    void dropoutsAreNoWander() {
        LongTone tone =
                new LongTone(24_000, 3150, 15)
                        .hiss(-58)
                        .level(1.5, 2)
                        .damage(new LongTone.Damage(0, 5, 0.3, 20, 0.002))
                        .damage(new LongTone.Damage(1, 9, 0.1, 30, 0))
                        .skew(10, 0.5, 1);
        DelayWander wander = read(tone, 10, false);
        assertEquals(0.5 / Math.sqrt(2), wander.rms().value(), 0.005);
        assertEquals(1, wander.peakToPeak().value(), 0.05);
    }

    @Test
    void withoutALongToneThereIsAReason() {
        DelayWander wander = read(new LongTone(24_000, 3150, 3), 0, false);
        assertFalse(wander.rms().isKnown());
        assertEquals(null, wander.trace());
    }
}
