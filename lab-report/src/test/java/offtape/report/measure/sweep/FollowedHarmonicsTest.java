package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.measure.tone.Complex;
import offtape.report.result.HarmonicCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bands filled by hand: a fundamental and its harmonics as pointers. */
class FollowedHarmonicsTest {

    private static final double TOP_HZ = 4000;
    private static final double LIMIT_HZ = 9000;
    private static final double GROWTH_S = 1.5;

    /** A sixth of an octave of it lasts 1.5 s · ln 2 / 6 = 0.1733 s. */
    private static final double BAND_S = GROWTH_S * Math.log(2) / 6;

    private static Cue.Sweep cue(double startHz) {
        return new Cue.Sweep("s", ChannelSet.BOTH, 0, 24_000, startHz, 4000, 0);
    }

    private static FollowedHarmonics empty(int channels) {
        return new FollowedHarmonics(cue(125), TOP_HZ, LIMIT_HZ, GROWTH_S, channels);
    }

    /** Around 1 kHz. */
    private static int middle(FollowedHarmonics followed) {
        for (int i = 0; i < followed.size(); i++) {
            if (Math.abs(followed.frequencyHz(i) - 1000) < 1) {
                return i;
            }
        }
        throw new AssertionError("no band at 1 kHz");
    }

    private static Complex polar(double size, double degrees) {
        return Complex.polar(size, Math.toRadians(degrees));
    }

    private static Baseband one(Complex z) {
        return new Baseband(new double[] {z.re()}, new double[] {z.im()}, 100, 0);
    }

    /** A moment of one channel: fundamental, second and third harmonic. */
    private static void hear(
            FollowedHarmonics followed, double hz, double widthHz, Complex... orders) {
        List<List<Baseband>> bases =
                List.of(List.of(one(orders[0])), List.of(one(orders[1])), List.of(one(orders[2])));
        followed.add(hz, bases, 0, widthHz);
    }

    /**
     * From 125 Hz = 1000 · 2^(−18/6) the first whole band is that around 1000 · 2^(−17/6) = 140.3
     * Hz, from 132.5 Hz on; up to 4 kHz = 1000 · 2^(12/6) the last is around 1000 · 2^(11/6) =
     * 3563.6 Hz. From 20 Hz it is that around 1000 · 2^(−27/6) = 44.2 Hz: 40 Hz is the least, 41.7
     * Hz its lower end.
     */
    @Test
    void bandsLieWhollyInTheSweep() {
        FollowedHarmonics followed = empty(1);
        assertEquals(29, followed.size());
        assertEquals(140.31, followed.frequencyHz(0), 0.005);
        assertEquals(3563.6, followed.frequencyHz(28), 0.05);
        assertEquals(132.43, followed.lowestHz(), 0.005);
        assertEquals(0.17329, followed.bandSeconds(), 1e-5);
        FollowedHarmonics deep = new FollowedHarmonics(cue(20), TOP_HZ, LIMIT_HZ, GROWTH_S, 1);
        assertEquals(44.19, deep.frequencyHz(0), 0.005);
        assertEquals(41.71, deep.lowestHz(), 0.005);
        assertEquals(0, new FollowedHarmonics(cue(125), 130, LIMIT_HZ, GROWTH_S, 1).size());
    }

    /** Motion turns the n-th harmonic n times as far as the fundamental, which is turned back. */
    @Test
    void motionIsTurnedBack() {
        FollowedHarmonics followed = empty(1);
        int i = middle(followed);
        for (double turned : new double[] {0, 77, 200, -31}) {
            hear(
                    followed,
                    1000,
                    50,
                    polar(2, turned),
                    polar(0.3, 2 * turned + 40),
                    polar(0.2, 3 * turned - 100));
        }
        assertEquals(4, followed.power(0, 1, i), 1e-12);
        assertEquals(0.09, followed.power(0, 2, i), 1e-12);
        assertEquals(0.04, followed.power(0, 3, i), 1e-12);
        assertEquals(0, followed.phase(0, 1, i), 1e-12);
        assertEquals(40, Math.toDegrees(followed.phase(0, 2, i)), 1e-9);
        assertEquals(-100, Math.toDegrees(followed.phase(0, 3, i)), 1e-9);
        assertEquals(0, followed.noise(0, 3, i, null, 1), 1e-12);
    }

    /** A band of a sixth of an octave around 1 kHz reaches from 943.9 to 1059.5 Hz. */
    @ParameterizedTest
    @CsvSource({
        "943, false",
        "945, true",
        "1059, true",
        "1060, false",
        "100, false",
        "9000, false"
    })
    void samplesFallIntoTheirBand(double hz, boolean inside) {
        FollowedHarmonics followed = empty(1);
        for (int k = 0; k < 2; k++) {
            hear(followed, hz, 50, polar(1, 0), polar(1, 0), polar(1, 0));
        }
        assertEquals(inside, followed.reaches(1, middle(followed)));
    }

    /** The ends of the first and the last band: 132.4 and 3775.5 Hz. */
    @ParameterizedTest
    @CsvSource({"132, 0, false", "133, 0, true", "3775, 28, true", "3776, 28, false"})
    void theOutermostBandsEndWhereTheyShould(double hz, int band, boolean inside) {
        FollowedHarmonics followed = empty(1);
        hear(followed, hz, 50, polar(1, 0), polar(1, 0), polar(1, 0));
        hear(followed, hz, 50, polar(1, 0), polar(1, 0), polar(1, 0));
        assertEquals(inside, followed.reaches(1, band));
    }

    /**
     * Up to 9 kHz the second harmonic is heard whole of bands that end below 4500 Hz, the third of
     * those that end below 3000 Hz: that around 2828 Hz = 1000 · 2^(9/6) ends at 2997 Hz.
     */
    @Test
    void aHarmonicIsToldWhereItLiesWhollyUnderTheLimit() {
        FollowedHarmonics followed = empty(1);
        for (int i = 0; i < followed.size(); i++) {
            assertFalse(followed.reaches(2, i), "nothing heard yet");
            double hz = followed.frequencyHz(i);
            hear(followed, hz, 50, polar(1, 0), polar(1, 0), polar(1, 0));
            assertFalse(followed.reaches(2, i), "a single sample has no scatter");
            hear(followed, hz, 50, polar(1, 0), polar(1, 0), polar(1, 0));
            assertTrue(followed.reaches(2, i));
            assertEquals(hz < 2900, followed.reaches(3, i), hz + " Hz");
        }
        assertTrue(followed.isOf(cue(125)));
        assertFalse(followed.isOf(cue(126)));
    }

    /**
     * Values 3 and 1 have the mean 2 and the mean square 5: power 4, and 1 is left, which is that
     * of the noise in each value. 100 Hz for 0.1733 s are 17.329 independent values, so the mean's
     * noise is 1/16.329 (the mean itself takes one value up). Fewer than two values are taken for
     * two.
     */
    @ParameterizedTest
    @CsvSource({"100, 0.061241", "11.7, 0.97325", "11.5, 1", "1, 1"})
    void noiseIsWhatScattersAboutTheMean(double widthHz, double expected) {
        FollowedHarmonics followed = empty(1);
        int i = middle(followed);
        hear(followed, 1000, widthHz, polar(1, 0), polar(3, 0), polar(1, 0));
        hear(followed, 1000, widthHz, polar(1, 0), polar(1, 0), polar(1, 0));
        assertEquals(4, followed.power(0, 2, i), 1e-12);
        assertEquals(expected, followed.noise(0, 2, i, null, 1), 1e-4 * expected);
        assertEquals(0, followed.noise(0, 3, i, null, 1), 1e-12);
        // 2 + j and 2 − j scatter as much
        FollowedHarmonics across = empty(1);
        hear(across, 1000, widthHz, polar(1, 0), new Complex(2, 1), polar(1, 0));
        hear(across, 1000, widthHz, polar(1, 0), new Complex(2, -1), polar(1, 0));
        assertEquals(expected, across.noise(0, 2, i, null, 1), 1e-4 * expected);
    }

    /**
     * Noise of density D in the silence leaves D / 0.1733 s / 2 in a mean over the band, where that
     * is more than what scatters.
     */
    @Test
    void theSilenceTellsNoiseToo() {
        FollowedHarmonics followed = empty(1);
        int i = middle(followed);
        hear(followed, 1000, 100, polar(1, 0), polar(3, 0), polar(1, 0));
        hear(followed, 1000, 100, polar(1, 0), polar(1, 0), polar(1, 0));
        PowerDensity white = Densities.white(0.02, 16_000);
        assertEquals(0.02 / BAND_S / 2, followed.noise(0, 3, i, white, 1), 1e-6);
        assertEquals(0.061241, followed.noise(0, 2, i, white, 1), 1e-5);
        PowerDensity falling = Densities.falling(16_000);
        double half = Math.pow(2, 1 / 12.0);
        assertEquals(
                falling.mean(3000 * 1.25 / half, 3000 * 1.25 * half) / BAND_S / 2,
                followed.noise(0, 3, i, falling, 1.25),
                1e-5 * followed.noise(0, 3, i, falling, 1.25));
    }

    /** Where the fundamental is not heard at all there is nothing to turn by. */
    @Test
    void silenceIsNoHarmonic() {
        FollowedHarmonics followed = empty(1);
        int i = middle(followed);
        hear(followed, 1000, 50, Complex.ZERO, polar(1, 0), polar(1, 0));
        hear(followed, 1000, 50, Complex.ZERO, polar(1, 0), polar(1, 0));
        assertEquals(0, followed.power(0, 2, i));
        assertEquals(0, followed.power(0, 1, i));
    }

    @Test
    void channelsAreKeptApart() {
        FollowedHarmonics followed = empty(2);
        int i = middle(followed);
        List<Baseband> first = List.of(one(polar(1, 0)), one(polar(2, 30)));
        List<Baseband> second = List.of(one(polar(0.1, 20)), one(polar(0.5, 60)));
        List<Baseband> third = List.of(one(polar(0.2, 10)), one(polar(0.4, 45)));
        followed.add(1000, List.of(first, second, third), 0, 50);
        followed.add(1000, List.of(first, second, third), 0, 50);
        assertEquals(0.01, followed.power(0, 2, i), 1e-12);
        assertEquals(0.25, followed.power(1, 2, i), 1e-12);
        assertEquals(0, followed.phase(1, 2, i), 1e-12);
        assertEquals(-45, Math.toDegrees(followed.phase(1, 3, i)), 1e-9);
    }

    private static HarmonicCurve.Point third(
            double fundamental, double harmonic, double degrees, PowerDensity noise) {
        FollowedHarmonics followed = empty(1);
        for (int k = 0; k < 2; k++) {
            hear(followed, 1000, 50, polar(fundamental, 0), polar(0, 0), polar(harmonic, degrees));
        }
        List<HarmonicCurve> curves = new SweepDistortionMeasure(followed, 0, noise, 1).measure();
        assertEquals(List.of(2, 3), curves.stream().map(HarmonicCurve::order).toList());
        assertEquals(1, curves.get(1).points().size());
        return curves.get(1).points().get(0);
    }

    /** Without noise what is left are 2 % of the reading and half a degree. */
    @Test
    void aHarmonicIsToldInPercentOfItsFundamental() {
        HarmonicCurve.Point p = third(2, 0.03, -120, null);
        assertEquals(1000, p.frequencyHz(), 1e-9);
        assertEquals(1.5, p.percent(), 1e-9);
        assertEquals(0, p.floorPercent());
        assertEquals(0.02 * 1.5, p.uncertaintyPercent(), 1e-9);
        assertEquals(-120, p.phaseDegrees(), 1e-9);
        assertEquals(0.5, p.phaseUncertaintyDegrees(), 1e-9);
    }

    /**
     * Noise of power N = 4e-4 beside a fundamental of 2 reads √N/2 = 1 %. A harmonic of 5 % is
     * heard as √(25 − 1) %; its amplitude moves by √(N/2), twice that being √2 · 1 %, and its phase
     * by as much over the reading: 1.41421/4.89898 rad.
     */
    @Test
    void noiseIsTakenOutAndMakesTheReadingUncertain() {
        PowerDensity white = Densities.white(8e-4 * BAND_S, 16_000);
        HarmonicCurve.Point p = third(2, 0.1, 90, white);
        double read = Math.sqrt(24);
        assertEquals(1, p.floorPercent(), 1e-4);
        assertEquals(read, p.percent(), 1e-4);
        assertEquals(Math.hypot(Math.sqrt(2), 0.02 * read), p.uncertaintyPercent(), 1e-4);
        assertEquals(
                Math.hypot(Math.toDegrees(Math.sqrt(2) / read), 0.5),
                p.phaseUncertaintyDegrees(),
                1e-3);
    }

    /** Four times the floor of 1 %: √(16 + 1) % is heard of it. */
    @ParameterizedTest
    @CsvSource({"0.0412, false", "0.0413, true", "0, false"})
    void whatDoesNotStandOutIsNotTold(double harmonic, boolean told) {
        PowerDensity white = Densities.white(2e-4 * BAND_S, 16_000);
        HarmonicCurve.Point p = third(1, harmonic, 0, white);
        assertEquals(told, p.standsOut());
        assertEquals(1, p.floorPercent(), 1e-4);
        assertEquals(told, p.phaseDegrees() != null);
    }

    /** A fundamental of 30 dB over its noise is the least that has a phase to go by. */
    @ParameterizedTest
    @CsvSource({"0.99, 0", "1.01, 2"})
    void aFundamentalInNoiseTellsNothing(double power, int curves) {
        FollowedHarmonics followed = empty(1);
        for (int k = 0; k < 2; k++) {
            hear(followed, 1000, 50, polar(Math.sqrt(power), 0), polar(0.5, 0), polar(0.5, 0));
        }
        PowerDensity white = Densities.white(2e-3 * BAND_S, 16_000);
        assertEquals(curves, new SweepDistortionMeasure(followed, 0, white, 1).measure().size());
    }
}
