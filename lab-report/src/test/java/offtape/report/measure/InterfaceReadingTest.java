package offtape.report.measure;

import static offtape.report.measure.MadeResults.NO;
import static offtape.report.measure.MadeResults.about;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.unit.Quantity;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.TurnedSweep;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Distortion;
import offtape.report.result.HumLine;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.StepNoise;
import org.junit.jupiter.api.Test;

/** What a loopback tells of an interface, from results and readings made by hand. */
class InterfaceReadingTest {

    private static final int RATE = 16_000;
    private static final double[] HZ = {100, 1000, 4000};
    private static final Quantity MEAN = Quantity.known(5, "ms", 0.003);

    private static final List<Noise> NOISES =
            List.of(
                    MadeResults.noise("left", -90, -92, -80, new HumLine(50, -95, 0.1)),
                    MadeResults.noise("right", -84, -86, -74, new HumLine(100, -99, 0.1)));

    private static ReferenceLevels returnedAt(double... peaks) {
        return new ReferenceLevels(
                StraightReturn.tone("first"), peaks, Complex.ZERO, new double[peaks.length]);
    }

    private static Results heard(
            List<Response> responses, List<Distortion> ladders, Quantity clock, Quantity late) {
        return MadeResults.of(
                MadeResults.timing(NO, clock),
                responses,
                ladders,
                NOISES,
                MadeResults.pair(about(-70, "dB"), about(-75, "dB"), late));
    }

    private static Results heard(List<Response> responses, Distortion... ladders) {
        return heard(responses, List.of(ladders), NO, NO);
    }

    private static List<InterfaceFigures.Channel> channels(Results heard, FollowedSweep sweep) {
        return new InterfaceReading(heard, returnedAt(0.1, 0.05), sweep, null)
                .figures(MEAN)
                .channels();
    }

    /** Every twelfth of an octave from 250 Hz to 4 kHz. */
    private static double[] twelfths() {
        return IntStream.rangeClosed(-24, 24).mapToDouble(k -> twelfth(k)).toArray();
    }

    private static double twelfth(int k) {
        return 1000 * Math.pow(2, k / 12.0);
    }

    /** The left channel leads by 30° throughout, the right one is 1 ms late. */
    private static FollowedSweep sweep(double deafFromHz, double deafToHz) {
        return TurnedSweep.of(
                new Cue.Sweep("sweep", ChannelSet.BOTH, 0, RATE, 250, 4000, -20),
                -96,
                193,
                hz -> Math.PI / 6,
                hz -> hz > deafFromHz && hz < deafToHz ? Double.NaN : -2 * Math.PI * hz * 0.001);
    }

    /** 20·lg 0.1 = −20 dB, 20·lg 0.05 = −26.02 dB. */
    @Test
    void noiseAndLevelAreThoseOfEachChannel() {
        List<InterfaceFigures.Channel> told = channels(heard(List.of()), null);
        assertEquals("left", told.get(0).channel());
        assertEquals("right", told.get(1).channel());
        assertEquals(-20, told.get(0).referenceReturnDbfs(), 1e-9);
        assertEquals(-26.0206, told.get(1).referenceReturnDbfs(), 1e-4);
        for (int c = 0; c < 2; c++) {
            assertEquals(NOISES.get(c).unweighted(), told.get(c).unweighted());
            assertEquals(NOISES.get(c).aWeighted(), told.get(c).aWeighted());
            assertEquals(NOISES.get(c).itu468(), told.get(c).itu468());
            assertEquals(NOISES.get(c).hum(), told.get(c).hum());
            assertNull(told.get(c).noise());
            assertNull(told.get(c).response());
        }
    }

    @Test
    void aChannelThatIsNotHeardIsLeftOut() {
        Results heard = heard(List.of());
        List<InterfaceFigures.Channel> one =
                new InterfaceReading(heard, returnedAt(0, 0.05), null, null)
                        .figures(MEAN)
                        .channels();
        assertEquals(1, one.size());
        assertEquals("right", one.get(0).channel());
        assertEquals(-84, one.get(0).unweighted().value());
        assertEquals(
                List.of(), new InterfaceReading(heard, null, null, null).figures(MEAN).channels());
    }

    /**
     * Right is 250 µs later than left, so each lies 0.125 ms from the mean of 5 ms; half of 8 µs
     * and 3 µs are 5 µs together.
     */
    @Test
    void eachChannelHasHalfOfTheDelayBetweenThem() {
        Quantity late = Quantity.known(250, "µs", 8);
        InterfaceFigures told =
                new InterfaceReading(
                                heard(List.of(), List.of(), NO, late),
                                returnedAt(0.1, 0.1),
                                null,
                                null)
                        .figures(MEAN);
        assertEquals(MEAN, told.delay());
        assertEquals(late, told.interchannelDelay());
        double[] ms = {4.875, 5.125};
        for (int c = 0; c < 2; c++) {
            Quantity delay = told.channels().get(c).delay();
            assertEquals(ms[c], delay.value(), 1e-12);
            assertEquals("ms", delay.unit());
            assertEquals(0.005, delay.uncertainty(), 1e-12);
        }
    }

    @Test
    void whereOneDelayIsNotKnownTheMeanIsTold() {
        Quantity late = Quantity.known(250, "µs", 8);
        assertEquals(MEAN, channels(heard(List.of()), null).get(1).delay());
        InterfaceReading without =
                new InterfaceReading(
                        heard(List.of(), List.of(), NO, late), returnedAt(0.1, 0.1), null, null);
        assertEquals(NO, without.figures(NO).channels().get(1).delay());
    }

    @Test
    void clockAndCrosstalkAreThoseOfTheLoop() {
        InterfaceFigures told =
                new InterfaceReading(
                                heard(List.of(), List.of(), about(-12, "ppm"), NO),
                                returnedAt(0.1, 0.1),
                                null,
                                null)
                        .figures(MEAN);
        assertEquals(-12, told.clockPpm());
        assertEquals(-70, told.crosstalkLeftToRight().value());
        assertEquals(-75, told.crosstalkRightToLeft().value());
        assertNull(
                new InterfaceReading(heard(List.of()), null, null, null).figures(MEAN).clockPpm());
    }

    /** Noise and distortion disturb the quietest least of what a louder sweep bends. */
    @Test
    void theResponseIsThatOfTheQuietestSweep() {
        Results heard =
                heard(
                        List.of(
                                MadeResults.response("left", -10, HZ, 1, 0, -1),
                                MadeResults.response("right", -10, HZ, 2, 0, -2),
                                MadeResults.response("left", -20, HZ, 3, 0, -3),
                                MadeResults.response("right", -20, HZ, 4, 0, -4),
                                MadeResults.response("left", -30, new double[] {1000}, 0)));
        List<InterfaceFigures.Channel> told = channels(heard, sweep(0, 0));
        InterfaceFigures.Curve left = told.get(0).response();
        assertArrayEquals(HZ, left.frequencyHz());
        assertArrayEquals(new double[] {3, 0, -3}, left.magnitudeDb());
        assertArrayEquals(new double[] {0.1, 0.11, 0.12}, left.uncertaintyDb(), 1e-12);
        assertArrayEquals(new double[] {4, 0, -4}, told.get(1).response().magnitudeDb());
    }

    /** A curve has two points at least; without a sweep there is no phase. */
    @Test
    void aSinglePointIsNoResponse() {
        double[] one = {1000};
        double[] two = {1000, 2000};
        Results heard =
                heard(
                        List.of(
                                MadeResults.response("left", -20, one, 0),
                                MadeResults.response("right", -20, two, 0, 1)));
        List<InterfaceFigures.Channel> told = channels(heard, sweep(0, 0));
        assertNull(told.get(0).response());
        assertArrayEquals(two, told.get(1).response().frequencyHz());
        assertNull(channels(heard, null).get(1).response());
    }

    /** One millisecond is 360° a kilohertz, through four turns; 30° are 30° everywhere. */
    @Test
    void thePhaseRunsOnThroughWholeTurns() {
        double[] hz = twelfths();
        double[] flat = new double[hz.length];
        Results heard =
                heard(
                        List.of(
                                MadeResults.response("left", -20, hz, flat),
                                MadeResults.response("right", -20, hz, flat)));
        List<InterfaceFigures.Channel> told = channels(heard, sweep(0, 0));
        for (int i = 0; i < hz.length; i++) {
            assertEquals(30, told.get(0).response().phaseDegrees()[i], 1e-9);
            assertEquals(-0.36 * hz[i], told.get(1).response().phaseDegrees()[i], 1e-9);
        }
    }

    /** Where a sweep is not heard its phase stays as it was, and as at its ends beyond them. */
    @Test
    void whereNothingIsHeardThePhaseStays() {
        double[] hz = {200, 250, 1000, twelfth(1), twelfth(2), twelfth(3), 4000, 4600};
        double[] right =
                channels(
                                heard(List.of(MadeResults.response("right", -20, hz, hz))),
                                sweep(1010, 1150))
                        .get(1)
                        .response()
                        .phaseDegrees();
        assertEquals(-90, right[0], 1e-9);
        assertEquals(-90, right[1], 1e-9);
        assertEquals(right[2], right[3], 1e-9);
        assertEquals(right[2], right[4], 1e-9);
        assertEquals(68.1, right[2] - right[5], 0.1);
        assertEquals(right[6], right[7], 1e-9);
    }

    @Test
    void harmonicsAreThoseOfTheSweepThatHasThem() {
        Results heard =
                heard(
                        List.of(
                                MadeResults.response("right", -20, HZ, 0, 0, 0),
                                MadeResults.response("left", -10, HZ, 0, 0, 0)
                                        .withHarmonics(MadeResults.third(0.02)),
                                MadeResults.response("right", -10, HZ, 0, 0, 0)
                                        .withHarmonics(MadeResults.third(0.03))));
        List<InterfaceFigures.Channel> told = channels(heard, null);
        assertEquals(MadeResults.third(0.02), told.get(0).harmonics());
        assertEquals(MadeResults.third(0.03), told.get(1).harmonics());
        assertEquals(List.of(), channels(heard(List.of()), null).get(0).harmonics());
    }

    /** A harmonic that does not stand out is known by what it lies under. */
    @Test
    void laddersAreToldStepByStep() {
        StepNoise bounds = new StepNoise(0.004, 0.006, null, null, null, false);
        LadderStep quiet = new LadderStep(-6.0, -6.0, 0.02, null, null, null, null, true, bounds);
        LadderStep loud = new LadderStep(0.0, 0.0, null, 0.05, null, null, null, false, bounds);
        Results heard =
                heard(
                        List.of(),
                        MadeResults.ladder("left", 315, NO, quiet),
                        MadeResults.ladder("left", 10_000, NO),
                        MadeResults.ladder("right", 1000, NO, quiet, loud));
        List<InterfaceFigures.Channel> told = channels(heard, null);
        InterfaceFigures.Step low = new InterfaceFigures.Step(-6, 0.02, 0.006);
        InterfaceFigures.Step high = new InterfaceFigures.Step(0, 0.004, 0.05);
        assertEquals(
                List.of(new InterfaceFigures.Ladder(315, List.of(low))), told.get(0).ladders());
        assertEquals(
                List.of(new InterfaceFigures.Ladder(1000, List.of(low, high))),
                told.get(1).ladders());
    }

    /**
     * Two equal samples A side by side have the spectrum 2·A·cos(πf/rate) and lie at the top of
     * Hann's window, whose squares sum to 3n/8: a density of 2·4A²·cos²/(3n/8·rate). The reference
     * tone of peak 0.1 has 0.005.
     */
    @Test
    void theNoiseIsToldBandByBand() {
        int n = 1024;
        double peak = 0.001;
        double[] x = new double[n];
        x[n / 2 - 1] = peak;
        x[n / 2] = peak;
        InterfaceFigures.Density noise = density(x, n);
        double[] edges = noise.edgesHz();
        double line = (double) RATE / n;
        assertEquals(line / 2, edges[0], 1e-9);
        double all = 8 * peak * peak / (0.375 * n * RATE) / 0.005;
        for (int i = 0; i < noise.levelDb().length; i++) {
            boolean fine = edges[i] < 1000;
            double to = fine ? edges[i] + line : edges[i] * Math.pow(2, 1.0 / 24);
            assertEquals(to, edges[i + 1], 1e-6, "from " + edges[i]);
            double cosine = Math.cos(Math.PI * (edges[i] + edges[i + 1]) / 2 / RATE);
            if (edges[i + 1] < 6000) {
                double db = 10 * Math.log10(all * cosine * cosine);
                assertEquals(db, noise.levelDb()[i], 0.05, "from " + edges[i]);
            }
        }
        double last = edges[edges.length - 1];
        double top = RATE / 2.0 + line / 2;
        assertTrue(last < top && last * Math.pow(2, 1.0 / 24) >= top, "up to " + last);
    }

    /**
     * Digital silence has no level; −300 dB stand for it. The lines of 64 samples lie 250 Hz apart,
     * wider than any band here: 31 of them adjoin from 125 Hz to 7875 Hz.
     */
    @Test
    void digitalSilenceIsVeryQuiet() {
        InterfaceFigures.Density noise = density(new double[64], 64);
        assertEquals(31, noise.levelDb().length);
        for (int i = 0; i < 31; i++) {
            assertEquals(-300, noise.levelDb()[i]);
            assertEquals(125 + 250 * i, noise.edgesHz()[i]);
        }
        assertEquals(7875, noise.edgesHz()[31]);
    }

    /** Of the left channel, in one piece; the right one is ten times louder. */
    private static InterfaceFigures.Density density(double[] x, int transform) {
        double[] louder = IntStream.range(0, x.length).mapToDouble(i -> 10 * x[i]).toArray();
        double[][] samples = {x, louder};
        PowerDensity[] densities = {
            PowerDensity.of(x, RATE, transform), PowerDensity.of(louder, RATE, transform)
        };
        List<InterfaceFigures.Channel> told =
                new InterfaceReading(
                                heard(List.of()),
                                returnedAt(0.1, 1),
                                null,
                                new NoiseDensities(samples, densities))
                        .figures(MEAN)
                        .channels();
        // ten times the noise re ten times the tone is the same
        assertArrayEquals(told.get(0).noise().levelDb(), told.get(1).noise().levelDb(), 1e-9);
        return told.get(0).noise();
    }
}
