package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static offtape.report.measure.loopback.Loops.db;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.unit.Quantity;
import offtape.report.result.HumLine;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Powers of independent noises add; what is left of the sum is the other. */
class NoiseWithoutTest {

    private static Noise heard(Quantity level, HumLine... hum) {
        return new Noise(
                "left",
                level,
                level,
                level,
                db(70, 0.1),
                List.of(hum),
                new NoiseSpectrum(new double[] {1000}, new double[] {-70}),
                new double[] {22.4, 22_400},
                NO,
                NO,
                NO);
    }

    /** 10·log(10^−5.8 − 10^−6.4) = −59.256 dB; 10·log(10^−6 − 0.5·10^−6) = −63.010 dB. */
    @ParameterizedTest
    @CsvSource({"-58, -64, -59.2563", "-60, -63.0103, -63.0103", "-50, -90, -50.0004"})
    void powersAreTakenOut(double heardDb, double ownDb, double restDb) {
        Noise rest =
                new NoiseWithout(Loops.withNoise(db(ownDb, 0.1)), -18)
                        .of(heard(db(heardDb, 0.1)), db(8, 0.1));
        assertEquals(restDb, rest.unweighted().value(), 1e-3);
        assertEquals(restDb, rest.aWeighted().value(), 1e-3);
        assertEquals(restDb, rest.itu468().value(), 1e-3);
        assertEquals(8 - restDb, rest.dynamicRange().value(), 1e-3);
    }

    /**
     * Half of the power is the interface's: 0.1 dB of the sum is 2.33 % of it, of the interface
     * 2.33 % of its half; together √(2.33² + 1.16²) = 2.60 % of the sum, 5.21 % of the rest, which
     * downwards are 0.232 dB.
     */
    @Test
    void theUncertaintyGrowsAsTheRestShrinks() {
        Noise rest =
                new NoiseWithout(Loops.withNoise(db(-63.0103, 0.1)), -18)
                        .of(heard(db(-60, 0.1)), NO);
        assertEquals(0.2323, rest.unweighted().uncertainty(), 5e-4);
    }

    @Test
    void whereNearlyAllIsTheInterfacesOnlyABoundIsTold() {
        NoiseWithout without = new NoiseWithout(Loops.withNoise(db(-60.2, 0.1)), -18);
        Noise rest = without.of(heard(db(-60, 0.1)), db(8, 0.1));
        assertFalse(rest.aWeighted().isKnown());
        // (1 − 10^−0.02) + √(2.33² + (2.33·0.955)²) % = 4.50 + 3.22 % of the sum: −71.1 dB
        assertEquals(
                "The interface's own noise makes up 95 % of what was heard (-60.0 dB), so the"
                        + " machine's is known to be less than -71.1 dB only.",
                rest.aWeighted().reason());
        assertFalse(rest.dynamicRange().isKnown());
        assertTrue(without.entries().stream().allMatch(e -> e.limits()));
    }

    /** 200 pairs of powers drawn with their scatter: the interval holds in 19 of 20 or more. */
    @Test
    void theIntervalHolds() {
        Random random = new Random(4);
        int held = 0;
        for (int i = 0; i < 200; i++) {
            double share = 0.75 * random.nextDouble();
            double sum = 1 + 0.0116 * random.nextGaussian();
            double own = share * (1 + 0.0116 * random.nextGaussian());
            Quantity rest =
                    new NoiseWithout(Loops.withNoise(db(10 * Math.log10(own), 0.1)), -18)
                            .of(heard(db(10 * Math.log10(sum), 0.1)), NO)
                            .unweighted();
            double truth = 10 * Math.log10(1 - share);
            held += !rest.isKnown() || Math.abs(rest.value() - truth) < rest.uncertainty() ? 1 : 0;
        }
        assertTrue(held >= 180 && held < 200, "held " + held);
    }

    /** The tone back 6.02 dB louder than in the loopback: its noise then lies 6.02 dB lower. */
    @Test
    void levelsAreThoseOfTheInterface() {
        NoiseWithout without = new NoiseWithout(Loops.withNoise(db(-60, 0.1)), -18 + 6.0206);
        Noise rest = without.of(heard(db(-60, 0.1)), NO);
        assertEquals(-61.2494, rest.unweighted().value(), 1e-3);
        // if it was the gain that changed it is all the interface's, which the uncertainty says
        assertTrue(rest.unweighted().uncertainty() > 5);
    }

    /**
     * Lines of the same mains of −60 and −66.02 dB: half the amplitude, so that the machine's may
     * be half as much again or half: −20·log 0.5 = 6.02 dB.
     */
    @Test
    void humOfTheInterfaceIsADoubt() {
        InterfaceFigures.Channel own =
                Loops.channel(db(-90, 0.1), null, null, List.of(new HumLine(50.01, -66.0206, 0.1)));
        HumLine line =
                new NoiseWithout(own, -18)
                        .of(
                                heard(
                                        db(-58, 0.1),
                                        new HumLine(50, -60, 0.1),
                                        new HumLine(100, -70, 0.1)),
                                NO)
                        .hum()
                        .get(0);
        assertEquals(-60, line.levelDb(), 0);
        assertEquals(Math.hypot(6.0206, 0.1), line.uncertaintyDb(), 1e-3);
    }

    /**
     * A third octave around 1 kHz is 231.5 Hz wide (IEC 61260): a density of −96.66 dB gives −73.01
     * dB in it, half of the power of −70 dB.
     */
    @Test
    void bandsOfTheSpectrumAreTakenOut() {
        InterfaceFigures.Density density =
                new InterfaceFigures.Density(
                        new double[] {1, 500, 1000, 5000}, new double[] {-96.66, -96.66, -96.66});
        Noise rest =
                new NoiseWithout(Loops.channel(db(-90, 0.1), null, density, List.of()), -18)
                        .of(heard(db(-58, 0.1)), NO);
        assertEquals(-73.01, rest.spectrum().levelDb()[0], 0.05);
    }
}
