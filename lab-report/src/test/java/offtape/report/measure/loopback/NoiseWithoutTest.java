package offtape.report.measure.loopback;

import static offtape.report.measure.loopback.Loops.NO;
import static offtape.report.measure.loopback.Loops.db;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import offtape.core.unit.Quantity;
import offtape.report.result.HumLine;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.InterfaceShare;
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

    /** From half of the power on the interface limits, over 0.8 of it only a bound is told. */
    @ParameterizedTest
    @CsvSource({
        "-63.02, 49.9, false, true",
        "-63, 50.1, true, true",
        "-60.98, 79.8, true, true",
        "-60.96, 80.2, true, false",
        "-59, 100, true, false"
    })
    void theShareDecides(double ownDb, double sharePercent, boolean limits, boolean known) {
        NoiseWithout without = new NoiseWithout(Loops.withNoise(db(ownDb, 0.1)), -18);
        Noise rest = without.of(heard(db(-60, 0.1)), NO);
        assertEquals(known, rest.itu468().isKnown());
        assertEquals(
                List.of("Noise, unweighted", "Noise, A-weighted", "Noise, ITU-R BS.468"),
                without.entries().stream().map(InterfaceShare.Entry::figure).toList());
        for (InterfaceShare.Entry entry : without.entries()) {
            assertEquals("left", entry.channel());
            assertEquals("dB", entry.unit());
            assertEquals(ownDb, entry.own(), 1e-9);
            assertEquals(-60, entry.heard(), 0);
            assertEquals(sharePercent, entry.sharePercent(), 0.1);
            assertEquals(limits, entry.limits());
            assertEquals(known ? "taken out" : "only a bound is told", entry.treatment());
        }
    }

    @Test
    void whatIsNotKnownStaysAsItWasHeard() {
        NoiseWithout nothing = new NoiseWithout(Loops.withNoise(NO), -18);
        Noise heard = heard(db(-60, 0.1));
        Noise rest = nothing.of(heard, db(8, 0.1));
        assertSame(heard.unweighted(), rest.unweighted());
        assertSame(heard.spectrum(), rest.spectrum(), "its noise over frequency was not told");
        NoiseWithout known = new NoiseWithout(Loops.withNoise(db(-70, 0.1)), -18);
        assertSame(NO, known.of(heard(NO), db(8, 0.1)).unweighted());
        assertEquals(List.of(), known.entries());
        assertEquals(List.of(), nothing.entries());
    }

    /** Hiss of −60 dB under a maximum of 8 dB; the uncertainties of both add as squares. */
    @Test
    void theRangeReachesFromTheRest() {
        NoiseWithout without = new NoiseWithout(Loops.withNoise(db(-120, 0.1)), -18);
        Quantity range = without.of(heard(db(-60, 0.3)), db(8, 0.4)).dynamicRange();
        assertEquals(68, range.value(), 1e-4);
        // 0.3 dB up is 7.15 % of the power; down that is 0.322 dB
        assertEquals(Math.hypot(0.322, 0.4), range.uncertainty(), 1e-3);
        assertEquals(
                db(70, 0.1),
                without.of(heard(db(-60, 0.3)), NO).dynamicRange(),
                "as it was heard where the maximum is not known");
        NoiseWithout loud = new NoiseWithout(Loops.withNoise(db(-60, 0.1)), -18);
        Noise bounded = loud.of(heard(db(-60, 0.1)), db(8, 0.1));
        assertEquals(bounded.aWeighted().reason(), bounded.dynamicRange().reason());
    }

    /** Where doubt is as large as the rest, the rest is told within a tenth: 10 dB. */
    @Test
    void theRestMayBeATenth() {
        NoiseWithout without = new NoiseWithout(Loops.withNoise(db(-61, 3)), -18);
        assertEquals(10, without.of(heard(db(-60, 3)), NO).unweighted().uncertainty(), 1e-9);
    }

    /**
     * More of the interface's than was heard: at 10^0.1 of it nothing is left but the doubt, √(1 +
     * 1.259²)·2.33 % = 3.74 %, which is −14.27 dB. With a tone that comes back 10 dB weaker than in
     * the loopback, nothing is known but that it is not over what was heard, 0.1 dB of doubt up.
     */
    @Test
    void aBoundIsNoMoreThanWasHeard() {
        assertEquals(
                "The interface's own noise makes up 100 % of what was heard (-60.0 dB), so the"
                        + " machine's is known to be less than -74.2 dB only.",
                new NoiseWithout(Loops.withNoise(db(-59, 0.1)), -18)
                        .of(heard(db(-60, 0.1)), NO)
                        .unweighted()
                        .reason());
        assertEquals(
                "The interface's own noise makes up 100 % of what was heard (-60.0 dB), so the"
                        + " machine's is known to be less than -59.9 dB only.",
                new NoiseWithout(Loops.withNoise(db(-70, 0.1)), -28)
                        .of(heard(db(-60, 0.1)), NO)
                        .unweighted()
                        .reason());
    }

    /**
     * A line at −66 dB in noise of −60 dB (both together), of which the interface may have half the
     * amplitude: 2·½·10^−0.6 = 25.1 % of the power up or down, beside 2.33 % of doubt as it is;
     * down that is 1.395 dB. At 1 kHz all weightings are 0 dB; at 50 Hz A-weighting takes 30.2 dB
     * off and leaves 0.024 %.
     */
    @Test
    void humMovesThePower() {
        HumLine own = new HumLine(1000, -72.0206, 0.1);
        NoiseWithout without =
                new NoiseWithout(Loops.channel(db(-120, 0.1), null, null, List.of(own)), -18);
        Noise rest = without.of(heard(db(-60, 0.1), new HumLine(1000, -66, 0.1)), NO);
        assertEquals(1.395, rest.unweighted().uncertainty(), 2e-3);
        assertEquals(1.395, rest.aWeighted().uncertainty(), 2e-3);
        assertEquals(1.395, rest.itu468().uncertainty(), 0.02);
        HumLine low = new HumLine(50, -72.0206, 0.1);
        Noise below =
                new NoiseWithout(Loops.channel(db(-120, 0.1), null, null, List.of(low)), -18)
                        .of(heard(db(-60, 0.1), new HumLine(50, -66, 0.1)), NO);
        assertEquals(1.395, below.unweighted().uncertainty(), 2e-3);
        assertEquals(0.1024 + 0.001, below.aWeighted().uncertainty(), 2e-4);
        // ITU-R BS.468 takes 23.9 dB off at 63 Hz and more below: 0.1 % at most
        assertEquals(0.105, below.itu468().uncertainty(), 2e-3);
    }

    /** Lines within 0.3 Hz are of one mains; the strongest of several counts. */
    @ParameterizedTest
    @CsvSource({"50.29, true", "49.71, true", "50.31, false", "49.69, false"})
    void linesOfTheSameMainsMeet(double ownHz, boolean same) {
        NoiseWithout without =
                new NoiseWithout(
                        Loops.channel(
                                db(-120, 0.1),
                                null,
                                null,
                                List.of(
                                        new HumLine(ownHz, -72.0412, 0.1),
                                        new HumLine(ownHz, -90, 0.1))),
                        -24.0206);
        Noise rest = without.of(heard(db(-50, 0.1), new HumLine(50, -60, 0.1)), NO);
        // the tone comes back 6.02 dB weaker than in the loopback, so the line is −66.02 dB re it
        assertEquals(same ? Math.hypot(6.0206, 0.1) : 0.1, rest.hum().get(0).uncertaintyDb(), 1e-3);
        List<InterfaceShare.Entry> lines =
                without.entries().stream().filter(e -> e.figure().startsWith("Hum")).toList();
        assertEquals(same ? 1 : 0, lines.size());
        if (same) {
            InterfaceShare.Entry line = lines.get(0);
            assertEquals("Hum, 50 Hz", line.figure());
            assertEquals("left", line.channel());
            assertEquals(-66.0206, line.own(), 1e-3);
            assertEquals(-60, line.heard(), 0);
            assertEquals(50, line.sharePercent(), 0.01);
            assertEquals("in the uncertainty", line.treatment());
        }
    }

    /** Half of the amplitude limits; a line that may all be the interface's is 20 dB in doubt. */
    @ParameterizedTest
    @CsvSource({
        "-66.03, 49.95, false, 6.012",
        "-66.01, 50.06, true, 6.031",
        "-60.5, 94.4, true, 20",
        "-59, 100, true, 20"
    })
    void aLineMayBeTheInterfacesOwn(
            double ownDb, double sharePercent, boolean limits, double doubtDb) {
        NoiseWithout without =
                new NoiseWithout(
                        Loops.channel(
                                db(-120, 0.1), null, null, List.of(new HumLine(50, ownDb, 0.1))),
                        -18);
        HumLine line = without.of(heard(db(-50, 0.1), new HumLine(50, -60, 0.1)), NO).hum().get(0);
        assertEquals(Math.hypot(doubtDb, 0.1), line.uncertaintyDb(), 2e-3);
        InterfaceShare.Entry entry = without.entries().get(3);
        assertEquals(sharePercent, entry.sharePercent(), 0.01);
        assertEquals(limits, entry.limits());
    }

    /**
     * From 891.25 to 1000 Hz −100 dB, up to 1122.02 Hz −90 dB: 108.75·10^−10 + 122.02·10^−9, −68.77
     * dB. Of −65 dB that leaves −67.36 dB; of −68.8 dB no more than four fifths are taken out, and
     * with a tone 2 dB weaker than in the loopback it is 2 dB more.
     */
    @ParameterizedTest
    @CsvSource({"-18, -65, -67.36", "-18, -68.8, -75.79", "-20, -65, -69.76"})
    void partsOfBandsAddUp(double returnDbfs, double heardDb, double restDb) {
        InterfaceFigures.Density density =
                new InterfaceFigures.Density(
                        new double[] {1, 800, 1000, 1300, 5000},
                        new double[] {-20, -100, -90, -20});
        NoiseWithout without =
                new NoiseWithout(Loops.channel(db(-90, 0.1), null, density, List.of()), returnDbfs);
        Noise sum =
                new Noise(
                        "left",
                        NO,
                        NO,
                        NO,
                        NO,
                        List.of(),
                        new NoiseSpectrum(new double[] {1000}, new double[] {heardDb}),
                        null,
                        NO,
                        NO,
                        NO);
        assertEquals(restDb, without.of(sum, NO).spectrum().levelDb()[0], 0.01);
        assertEquals(heardDb, sum.spectrum().levelDb()[0], 0, "what was heard stays as it was");
    }

    @Test
    void withoutASilenceThereIsNoSpectrum() {
        InterfaceFigures.Density density =
                new InterfaceFigures.Density(new double[] {1, 5000}, new double[] {-90});
        Noise none = new Noise("left", NO, NO, NO, NO, List.of(), null, null, NO, NO, NO);
        assertNull(
                new NoiseWithout(Loops.channel(NO, null, density, List.of()), -18)
                        .of(none, NO)
                        .spectrum());
    }
}
