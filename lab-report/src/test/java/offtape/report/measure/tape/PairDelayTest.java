package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;

/** Phases made up of a delay: −2πfτ, wrapped. */
class PairDelayTest {

    private static List<HeardTone> tones(double delayUs, double turn, double... hz) {
        return Arrays.stream(hz)
                .mapToObj(
                        f -> {
                            double phase =
                                    ToneReader.wrapped(-2 * Math.PI * f * 1e-6 * delayUs + turn);
                            return new HeardTone(
                                    0,
                                    3,
                                    f,
                                    0.01,
                                    List.of(),
                                    Quantity.unknown("not asked"),
                                    new HeardTone.Phase(phase, 0.002, 0, 0.001),
                                    0);
                        })
                .toList();
    }

    /** 160 µs are 1.6 periods of 10 kHz and 2.56 of 16 kHz. */
    @Test
    void lowTonesTellThePeriodOfHighOnes() {
        for (double delay : new double[] {-400, -160, 0, 3, 160, 400}) {
            List<HeardTone> tones = tones(delay, 0, 16_000, 63, 1000, 10_000, 4000);
            PairDelay pair = PairDelay.of(tones);
            assertEquals(delay, pair.delay().value(), 1e-6);
            for (HeardTone t : tones) {
                assertEquals(delay, pair.of(t).value(), 1e-6);
            }
        }
    }

    @Test
    void oppositePolarityIsToldFromDelay() {
        PairDelay pair = PairDelay.of(tones(25, Math.PI, 100, 1000, 10_000));
        assertTrue(pair.isInverted());
        assertEquals(25, pair.delay().value(), 1e-6);
    }

    /** 8 and 10 kHz agree every 1/(10 − 8) kHz = 500 µs: 100 µs and −400 µs. */
    @Test
    void whatStaysOpenIsSaid() {
        Quantity delay = PairDelay.of(tones(100, 0, 8000, 10_000)).delay();
        assertFalse(delay.isKnown());
        assertTrue(delay.reason().contains("100.0 µs and -400.0 µs"), delay.reason());
        assertEquals(
                "No tone was heard on both channels.", PairDelay.of(List.of()).delay().reason());
    }
}
