package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.measure.sweep.Leakage.Leak;
import offtape.report.measure.tone.Complex;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Responses from sweeps whose bands are filled by hand. */
class ResponseMeasureTest {

    private static final double START_HZ = 40;
    private static final int LOWEST = -192;
    private static final int HIGHEST = 96;

    /** So slow that nothing of its lag is left. */
    private static final double SLOW_S = 1000;

    private static final double OWN_DB = 0.006;

    /** What one channel returns of a sweep of amplitude 1, four octaves down to two up. */
    private static FollowedSweep sweep(
            double bandSeconds, double widthHz, DoubleUnaryOperator db, DoubleUnaryOperator phase) {
        return sweep(START_HZ, bandSeconds, widthHz, db, phase);
    }

    private static FollowedSweep sweep(
            double startHz,
            double bandSeconds,
            double widthHz,
            DoubleUnaryOperator db,
            DoubleUnaryOperator phase) {
        FollowedSweep sweep = empty(startHz, 1, bandSeconds);
        for (int band = LOWEST; band <= HIGHEST; band++) {
            double hz = SweepFollower.bandHz(band);
            double size = Math.pow(10, db.applyAsDouble(hz) / 20);
            sweep.addReturn(
                    band, List.of(one(Complex.polar(size, phase.applyAsDouble(hz)))), 0, widthHz);
            sweep.addProgramme(band, one(new Complex(1, 0)), 0);
        }
        return sweep;
    }

    private static FollowedSweep empty(int channels, double bandSeconds) {
        return empty(START_HZ, channels, bandSeconds);
    }

    private static FollowedSweep empty(double startHz, int channels, double bandSeconds) {
        Cue.Sweep cue = new Cue.Sweep("s", ChannelSet.BOTH, 0, 24_000, startHz, 4200, -14);
        return new FollowedSweep(cue, LOWEST, HIGHEST - LOWEST + 1, channels, bandSeconds);
    }

    private static Baseband one(Complex z) {
        return new Baseband(new double[] {z.re()}, new double[] {z.im()}, 100, 0);
    }

    private static Response response(FollowedSweep sweep, PowerDensity noise, double unsteady) {
        return new ResponseMeasure(sweep, 0, noise, 1, Leakage.NONE, unsteady)
                .measure("left", OptionalDouble.empty());
    }

    private static double octaves(double hz) {
        return Math.log(hz / 1000) / Math.log(2);
    }

    private static double at(double[] hz, double[] values, double wanted) {
        return SweepBench.at(hz, values, wanted);
    }

    /** 24 points an octave from 62.5 Hz to 4 kHz; straight lines pass a parabola unchanged. */
    @Test
    void anEvenTiltComesBackAsItIs() {
        Response r = response(sweep(SLOW_S, 1, hz -> 7 + 3 * octaves(hz), hz -> 0.2), null, 0);
        assertEquals("left", r.channel());
        assertEquals(-14, r.levelDb());
        double[] hz = r.frequencyHz();
        assertEquals(145, hz.length);
        for (int i = 0; i < hz.length; i++) {
            assertEquals(62.5 * Math.pow(2, i / 24.0), hz[i], 1e-9 * hz[i]);
            assertEquals(3 * octaves(hz[i]), r.magnitudeDb()[i], 1e-4);
            assertEquals(Math.toDegrees(0.2), r.phaseDegrees()[i], 1e-9);
        }
        assertEquals(500, r.lowerEdge().value(), 0.01);
    }

    /**
     * What remains: 0.006 dB, 0.03 dB of ringing falling from 40 Hz on, and at 3 dB an octave a lag
     * of 0.3 dB over the cycles of growth, 1.2 dB below 60 Hz. A speed that strays by 0.1 % (rms)
     * reads the response 0.00144 octaves off: 0.00866 dB at k = 2.
     */
    @ParameterizedTest
    @CsvSource({"62.5, 0.1", "125, 0.1", "1000, 0.1", "2000, 0.1"})
    void aSlopeIsLessSure(double hz, double lagDb) {
        double bandSeconds = 2 * Math.log(2) / 48;
        double cycles = 2 * hz;
        double own = OWN_DB + lagDb * 3 / cycles + 0.03 * START_HZ / hz;
        Response steady = response(sweep(bandSeconds, 1, f -> 3 * octaves(f), f -> 0), null, 0);
        assertEquals(own, at(steady.frequencyHz(), steady.uncertaintyDb(), hz), 1e-7);
        Response moving = response(sweep(bandSeconds, 1, f -> -3 * octaves(f), f -> 0), null, 1e-3);
        double unsteady = 2 * 1e-3 * 3 / Math.log(2);
        assertEquals(
                Math.hypot(own, unsteady),
                at(moving.frequencyHz(), moving.uncertaintyDb(), hz),
                1e-7);
    }

    /** The sweep starts at 50 Hz, so that 62.5 Hz lies under 1.5 times that, 78.7 Hz does not. */
    @Test
    void nearItsStartTheLagIsLessSure() {
        double bandSeconds = 2 * Math.log(2) / 48;
        FollowedSweep sweep = sweep(50, bandSeconds, 1, hz -> 3 * octaves(hz), hz -> 0);
        Response r = response(sweep, null, 0);
        double near = 74.3254;
        assertEquals(
                OWN_DB + 0.4 * 3 / (2 * near) + 0.03 * 50 / near,
                at(r.frequencyHz(), r.uncertaintyDb(), near),
                1e-6);
        double clear = 78.7451;
        assertEquals(
                OWN_DB + 0.1 * 3 / (2 * clear) + 0.03 * 50 / clear,
                at(r.frequencyHz(), r.uncertaintyDb(), clear),
                1e-6);
    }

    /**
     * Noise of a tenth of the power: what is left is 0.9, so the noise's share of an amplitude is
     * √(0.1/0.9/2), 2.0472 dB for a single value. The parabola spreads over nine bands, at an end
     * over five. Where those hold few values it knows no more than one; with half a value a band,
     * 4.5, it is better by √(2.25/4.5), at the end by √(2.25/2.5). 1 kHz is sure by definition; all
     * else errs with it.
     */
    @ParameterizedTest
    @CsvSource({"0.001, 1, 1", "0.25, 1, 1", "0.5, 0.70711, 0.94868", "50, 0.070711, 0.094868"})
    void noiseMakesALevelUncertain(double valuesABand, double inside, double atTheEnd) {
        double widthHz = valuesABand / SLOW_S;
        PowerDensity noise = Densities.white(0.1 * 2 / widthHz, 16_000);
        Response r = response(sweep(SLOW_S, widthHz, hz -> 0, hz -> 0), noise, 0);
        double each = 20 / Math.log(10) * Math.sqrt(0.1 / 0.9 / 2);
        assertEquals(2.0472, each, 1e-4);
        double zero = each * inside;
        double[] hz = r.frequencyHz();
        double[] u = r.uncertaintyDb();
        assertEquals(0, r.magnitudeDb()[0], 1e-9);
        assertEquals(OWN_DB + 0.03 * START_HZ / 1000, at(hz, u, 1000), 1e-6);
        assertEquals(2 * Math.hypot(each * inside, zero), at(hz, u, 2000), 1e-4 * each);
        assertEquals(2 * Math.hypot(each * atTheEnd, zero), u[0], 1e-3 * each);
        assertEquals(2 * Math.hypot(each * atTheEnd, zero), u[u.length - 1], 1e-3 * each);
    }

    /**
     * Bands of 0 and 0.5 dB in turn. Four of nine about a place have 0.5 dB, at distances ±1 and
     * ±3: squares about their mean of 2/9 dB 1 − 4/9 = 0.5556, of which a parabola explains (0.5 ·
     * 20 − 2 · 60/9)² / 308 = 0.0361. The standard error is √(0.5195/6 · 2.25/9) = 0.1471 dB.
     */
    @Test
    void scatterCountsWhereItIsMore() {
        FollowedSweep sweep =
                sweep(SLOW_S, 1, hz -> 0.5 * ((int) Math.rint(48 * octaves(hz)) & 1), hz -> 0);
        Response r = response(sweep, null, 0);
        double[] u = r.uncertaintyDb();
        double error = 0.14712;
        assertEquals(2 * Math.hypot(error, error), at(r.frequencyHz(), u, 2000), 1e-3);
    }

    /** Less than three tenths of what is heard is left when the noise is taken out: not heard. */
    @ParameterizedTest
    @CsvSource({"0.69, true", "0.71, false"})
    void whatIsMostlyNoiseIsNotHeard(double share, boolean heard) {
        PowerDensity noise = Densities.white(2 * share, 16_000);
        Response r = response(sweep(SLOW_S, 1, hz -> 0, hz -> 0), noise, 0);
        if (heard) {
            assertEquals(145, r.frequencyHz().length);
        } else {
            assertNull(r);
        }
    }

    /** Above 2 kHz only: the rest of the curve is told, and no phase of a part of it. */
    @Test
    void whatIsNotHeardIsLeftOut() {
        PowerDensity noise = Densities.white(2e-4, 16_000);
        Response r = response(sweep(SLOW_S, 1, hz -> hz > 2000 ? -40 : 0, hz -> 0), noise, 0);
        double[] hz = r.frequencyHz();
        assertEquals(2000, hz[hz.length - 1], 1e-6);
        assertEquals(0, r.magnitudeDb()[hz.length - 1], 1e-6);
    }

    /** A band that the programme's own sweep does not hold tells nothing either. */
    @Test
    void whatWasNotSentIsLeftOut() {
        FollowedSweep sweep = empty(1, SLOW_S);
        for (int band = LOWEST; band <= HIGHEST; band++) {
            sweep.addReturn(band, List.of(one(new Complex(1, 0))), 0, 1);
            if (band < 48) {
                sweep.addProgramme(band, one(new Complex(1, 0)), 0);
            }
        }
        double[] hz = response(sweep, null, 0).frequencyHz();
        assertTrue(hz[hz.length - 1] < 2000 && hz[hz.length - 1] > 1900);
    }

    /** Level and no more where a sweep is not heard everywhere; all or nothing of the phase. */
    @Test
    void thePhaseIsToldWholeOrNotAtAll() {
        FollowedSweep sweep = empty(1, SLOW_S);
        for (int band = LOWEST; band <= HIGHEST; band++) {
            // two pointers against each other have power, but no phase
            boolean lost = band == 10;
            sweep.addReturn(band, List.of(one(new Complex(1, 0))), 0, 1);
            sweep.addReturn(band, List.of(one(new Complex(lost ? -1 : 1, 0))), 0, 1);
            sweep.addProgramme(band, one(new Complex(1, 0)), 0);
        }
        Response r = response(sweep, null, 0);
        assertEquals(145, r.frequencyHz().length);
        assertNull(r.phaseDegrees());
    }

    @Test
    void aSweepThatMissesOneKilohertzTellsNothing() {
        FollowedSweep high =
                new FollowedSweep(
                        new Cue.Sweep("s", ChannelSet.BOTH, 0, 24_000, 1500, 4200, 0),
                        40,
                        50,
                        1,
                        SLOW_S);
        for (int band = 40; band < 90; band++) {
            high.addReturn(band, List.of(one(new Complex(1, 0))), 0, 1);
            high.addProgramme(band, one(new Complex(1, 0)), 0);
        }
        assertNull(response(high, null, 0));
    }

    /**
     * A high-pass of second order at 160 Hz. A path of least phase lags behind the sweep, which
     * reads it too quiet by √2/(2·L·ω) at its edge ({@link SweepLag}): with L = 0.3 s 0.002345, or
     * 0.02037 dB. One that turns no phase does not. In the first case that is put right, in the
     * other not.
     */
    @Test
    void theLagIsPutRightWhereThePathTurnsThePhase() {
        double edge = 160;
        double bandSeconds = 0.3 * Math.log(2) / 48;
        DoubleUnaryOperator db = hz -> -10 * Math.log10(1 + Math.pow(edge / hz, 4));
        Response turning =
                response(
                        sweep(
                                bandSeconds,
                                1,
                                db,
                                hz ->
                                        Math.PI
                                                - Math.atan2(
                                                        Math.sqrt(2) * hz / edge,
                                                        1 - hz * hz / (edge * edge))),
                        null,
                        0);
        Response still = response(sweep(bandSeconds, 1, db, hz -> 0), null, 0);
        double[] hz = turning.frequencyHz();
        assertEquals(-3.0103, at(hz, still.magnitudeDb(), edge), 0.003);
        assertEquals(
                0.02037,
                at(hz, turning.magnitudeDb(), edge) - at(hz, still.magnitudeDb(), edge),
                0.002);
    }

    /** Below 1.5 times the start, here of 60 Hz, the phase still rings and is not asked. */
    @Test
    void thePhaseOfTheStartIsNotAsked() {
        double edge = 160;
        double bandSeconds = 0.3 * Math.log(2) / 48;
        DoubleUnaryOperator db = hz -> -10 * Math.log10(1 + Math.pow(edge / hz, 4));
        double[][] found = new double[2][];
        for (int ringing = 0; ringing < 2; ringing++) {
            double swing = 2 * ringing;
            DoubleUnaryOperator phase =
                    hz ->
                            Math.PI
                                    - Math.atan2(
                                            Math.sqrt(2) * hz / edge, 1 - hz * hz / (edge * edge))
                                    + (hz < 88 ? swing * Math.sin(hz) : 0);
            found[ringing] = response(sweep(60, bandSeconds, 1, db, phase), null, 0).magnitudeDb();
        }
        assertArrayEquals(found[0], found[1], 1e-9);
    }

    /** Right sounds upright below 1 kHz and inverted above; a tenth of it leaks into left. */
    @Test
    void whatLeaksInIsTakenOut() {
        FollowedSweep sweep = empty(2, SLOW_S);
        for (int band = LOWEST; band <= HIGHEST; band++) {
            double right = band < 0 ? 1 : -1;
            Complex left = new Complex(1 + 0.1 * right, 0);
            sweep.addReturn(band, List.of(one(left), one(new Complex(right, 0))), 0, 1);
            sweep.addProgramme(band, one(new Complex(1, 0)), 0);
        }
        Leakage leakage = new Leakage(Leak.NONE, new Leak(new Complex(0.1, 0), 1000));
        Response r =
                new ResponseMeasure(sweep, 0, null, 1, leakage, 0)
                        .measure("left", OptionalDouble.empty());
        for (double db : r.magnitudeDb()) {
            assertEquals(0, db, 1e-9);
        }
        Response right =
                new ResponseMeasure(sweep, 1, null, 1, leakage, 0)
                        .measure("right", OptionalDouble.empty());
        assertEquals("right", right.channel());
        assertEquals(180, Math.abs(at(right.frequencyHz(), right.phaseDegrees(), 2000)), 1e-9);
    }

    /** At twice the speed the noise is that at twice the frequency, where it is weaker here. */
    @Test
    void noiseIsReadWhereTheRecordingHasIt() {
        FollowedSweep sweep = sweep(SLOW_S, 1, hz -> -90, hz -> 0);
        PowerDensity falling = Densities.falling(16_000);
        double[] u = new double[2];
        for (int speed = 1; speed <= 2; speed++) {
            Response r =
                    new ResponseMeasure(sweep, 0, falling, speed, Leakage.NONE, 0)
                            .measure("left", OptionalDouble.empty());
            u[speed - 1] = at(r.frequencyHz(), r.uncertaintyDb(), 3000);
        }
        assertTrue(u[1] < 0.9 * u[0], u[0] + " " + u[1]);
    }

    private static ResponseCurve curve(double[] hz, double[] db, double[] u) {
        return new ResponseCurve(hz, db, u);
    }

    /**
     * From +1 dB at 5 kHz to −0.5 dB at 100 Hz: half of that is 0.75 dB, uncertain by half of
     * √(0.3² + 0.4²) dB. What lies under 63 Hz or over 8 kHz does not count.
     */
    @Test
    void theRippleIsHalfTheRangeOfItsBand() {
        double[] hz = {40, 62, 63, 100, 1000, 5000, 8000, 8100, 12_000};
        double[] db = {9, 5, 0.4, -0.5, 0, 1, 0.2, -7, -9};
        double[] u = {0.1, 0.1, 0.1, 0.4, 0.1, 0.3, 0.1, 0.1, 0.1};
        Response r =
                ResponseMeasure.response("left", -20, curve(hz, db, u), OptionalDouble.empty());
        assertEquals(0.75, r.ripple().value(), 1e-12);
        assertEquals("dB", r.ripple().unit());
        assertEquals(0.25, r.ripple().uncertainty(), 1e-12);
        assertEquals(63, r.rippleFromHz());
        assertEquals(8000, r.rippleToHz());
    }

    /** A point at the very end of the band belongs to it, whichever end. */
    @ParameterizedTest
    @CsvSource({"3, 0, 1.5", "0, 3, 1.5", "-4, 0, 2", "0, -4, 2"})
    void theEndsOfTheRipplesBandBelongToIt(double low, double high, double expected) {
        double[] hz = {63, 1000, 8000};
        Response r =
                ResponseMeasure.response(
                        "left",
                        -20,
                        curve(hz, new double[] {low, 0, high}, new double[3]),
                        OptionalDouble.empty());
        assertEquals(expected, r.ripple().value(), 1e-12);
    }

    /** As far as a shorter sweep reaches, which is told; nothing under its band. */
    @Test
    void theRipplesBandEndsWithTheSweep() {
        Response narrow =
                ResponseMeasure.response(
                        "left",
                        -20,
                        curve(
                                new double[] {200, 1000, 3000},
                                new double[] {2, 0, 1},
                                new double[3]),
                        OptionalDouble.empty());
        assertEquals(200, narrow.rippleFromHz());
        assertEquals(3000, narrow.rippleToHz());
        assertEquals(1, narrow.ripple().value(), 1e-12);
        Response deep =
                ResponseMeasure.response(
                        "left",
                        -20,
                        curve(new double[] {20, 50}, new double[] {0, 0}, new double[2]),
                        OptionalDouble.empty());
        assertFalse(deep.ripple().isKnown());
        assertTrue(deep.ripple().reason().contains("does not cover"));
    }
}
