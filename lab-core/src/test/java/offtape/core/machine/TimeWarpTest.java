package offtape.core.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.machine.Bench.Line;
import org.apache.commons.math3.special.BesselJ;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The return against closed forms of warped tones. */
class TimeWarpTest {

    /**
     * δ(u) = a·sin(ωu) read from a perfect tape gives s(u) = u − a/ω·(cos ωu − 1), so a tone
     * returns as A·sin(2πf·s(u)). Compared sample by sample; the bound is −120 dB of the tone.
     */
    @ParameterizedTest
    @CsvSource({"44100, 20000", "44100, 997", "48000, 20000", "48000, 40", "96000, 40000"})
    void warpedToneAgreesWithItsClosedForm(int rateHz, double frequencyHz) {
        double a = 0.003;
        double omega = 2 * Math.PI * 10;
        double[] left =
                Bench.play(
                        Bench.machine(
                                "'transport':{'components':[{'frequencyHz':10,'peakPercent':0.3}]}"),
                        rateHz,
                        1.5,
                        t -> Math.sin(2 * Math.PI * frequencyHz * t) / 2)[0];
        double gain = 0;
        double worst = 0;
        // The line-up at 1 kHz differs from 1 by the ripple of the band limit: below 1e-6 too.
        for (int i = rateHz / 5; i < rateHz * 6 / 5; i++) {
            double u = (double) i / rateHz;
            double s = u - a / omega * (Math.cos(omega * u) - 1);
            double expected = Math.sin(2 * Math.PI * frequencyHz * s) / 2;
            worst = Math.max(worst, Math.abs(left[i] - expected));
            gain = Math.max(gain, Math.abs(expected));
        }
        assertTrue(gain > 0.49, "the tone is there");
        assertTrue(worst < 0.5e-6, "worst error re the tone: " + worst / 0.5);
    }

    /**
     * A tone f under flutter a·sin(2πFt) is phase modulated by β = f·a/F; its lines at f ± nF have
     * peaks |J_n(β)|. With f = 3150 Hz, a = 0.2 %, F = 4 Hz: β = 1.575.
     */
    @Test
    void flutterSidebandsAreBesselFunctions() {
        double[] left =
                Bench.play(
                        Bench.machine(
                                "'transport':{'components':[{'frequencyHz':4,'peakPercent':0.2}]}"),
                        48_000,
                        7,
                        Bench.sine(3150, 0))[0];
        double beta = 3150 * 0.002 / 4;
        for (int n = -4; n <= 4; n++) {
            double expected = Math.abs(BesselJ.value(Math.abs(n), beta));
            Line line = Bench.line(left, 48_000, 0.5, 6.5, 3150 + 4 * n);
            assertEquals(expected, line.peak() / Bench.REFERENCE_PEAK, 2e-5, "line " + n);
        }
    }

    /**
     * Heads τ = d/v apart hear δ(t) − δ(t − τ), the line times 2·|sin πFτ|, here with 30 mm at
     * 190.5 mm/s: τ = 157.48 ms. Sidebands are J1(β)/J0(β) with β = f·a'/F. First order in a = 0.05
     * %; the second order is smaller by a, and the tone's own line stays at f.
     */
    @ParameterizedTest
    @CsvSource({"3.175", "1.2", "8", "9.525", "14"})
    void offTapeFlutterIsCombed(double rateHz) {
        double heard = 2 * Math.abs(Math.sin(Math.PI * rateHz * 30 / 190.5)) * 0.0005;
        double beta = 3150 * heard / rateHz;
        double expected = BesselJ.value(1, beta) / BesselJ.value(0, beta);
        double measured = sidebandRatio("off-tape", rateHz, "");
        assertEquals(expected, measured, 2e-3 * expected);
    }

    /** At F = 1/τ = 6.35 Hz both heads see the same speed: what is left is of second order. */
    @Test
    void offTapeFlutterVanishesInTheCombsZero() {
        double single = 3150 * 0.0005 / 6.35 / 2;
        assertTrue(sidebandRatio("off-tape", 6.35, "") < 2e-3 * single);
    }

    /**
     * Two passes of the same line, Δφ apart, leave a·|1 − e^(iΔφ)| = 2a·|sin(Δφ/2)|: nothing in
     * phase, √2 at a quarter turn, 2 in opposition.
     */
    @ParameterizedTest
    @CsvSource({"0", "60", "90", "180"})
    void twoPassesBeat(double degrees) {
        double heard = 2 * Math.sin(Math.toRadians(degrees / 2)) * 0.0005;
        double beta = 3150 * heard / 4;
        double expected = BesselJ.value(1, beta) / BesselJ.value(0, beta);
        double measured = sidebandRatio("two-pass", 4, ",'recordPhaseDegrees':" + degrees);
        assertEquals(expected, measured, 2e-3 * expected + 2e-5);
    }

    /** A tape that runs 1.5 % fast returns 1000 Hz as 1015 Hz. */
    @Test
    void constantDeviationShiftsThePitch() {
        double[] left =
                Bench.play(
                        Bench.machine("'transport':{'speedDeviationPercent':1.5}"),
                        48_000,
                        3,
                        Bench.sine(1000, 0))[0];
        double first = Bench.line(left, 48_000, 0.5, 1.5, 1015).phase();
        double second = Bench.line(left, 48_000, 1.5, 2.5, 1015).phase();
        assertEquals(0, Math.IEEEremainder(second - first, 2 * Math.PI), 1e-6);
        assertEquals(0, Bench.line(left, 48_000, 0.5, 1.5, 1015).levelDb(), 1e-5);
    }

    /**
     * A recording clock 100 ppm fast counts 1 000 100 samples in a million: 1000 Hz reads lower.
     */
    @Test
    void recordersClockShiftsThePitchInLoopback() {
        MachineRun run =
                Bench.run(
                        Bench.machine("'mode':'loopback','recorder':{'clockErrorPpm':100}"),
                        48_000,
                        10);
        assertEquals(1 / 1.0001, run.timeMap().meanRate(), 1e-12);
        assertEquals(1 / 1.0001 - 1, run.timeMap().returnDeviation(3), 1e-12);
    }

    /** Drift of k a minute: s(u) = u + k·u²/120 with u in seconds. */
    @Test
    void driftIsAParabola() {
        MachineRun run =
                Bench.run(Bench.machine("'transport':{'driftPercentPerMinute':0.3}"), 48_000, 100);
        for (double u : new double[] {0, 1, 17.3, 99}) {
            assertEquals(
                    u + 0.003 * u * u / 120, run.timeMap().programmeSeconds(u), 1e-11, "at " + u);
        }
    }

    /** Delay: 30 mm at 190.5 mm/s, 100 samples of interface, 2 s of lead: the sum, in ms. */
    @Test
    void delayIsTheSumOfItsParts() {
        MachineRun run =
                Bench.run(
                        Bench.machine(
                                "'mode':'off-tape','recorder':{'startSeconds':2,'delaySamples':100}"),
                        48_000,
                        10);
        double expected = 2000 + 100 / 48.0 + 1000 * 30 / 190.5;
        assertEquals(expected, run.truth().timing().delayMs(), 1e-9);
        assertEquals(1000 * 30 / 190.5, run.truth().timing().headDelayMs(), 1e-9);
    }

    /** Time map and its inverse, with everything that moves. */
    @Test
    void timeMapAndItsInverseAgree() {
        for (String mode : new String[] {"off-tape", "two-pass", "reference-tape", "loopback"}) {
            TimeMap map =
                    Bench.run(
                                    Bench.machine(
                                            "'mode':'"
                                                    + mode
                                                    + "','transport':{'speedDeviationPercent':-1,"
                                                    + "'randomFlutter':{'rmsPercent':0.3},"
                                                    + "'scrapeFlutter':{'rmsPercent':0.05,"
                                                    + "'lowHz':2000,'highHz':5000}}"),
                                    48_000,
                                    20)
                            .timeMap();
            for (double s = -0.5; s < 20.4; s += 0.37) {
                assertEquals(s, map.programmeSeconds(map.returnSeconds(s)), 2e-12, mode);
            }
        }
    }

    private static double sidebandRatio(String mode, double rateHz, String more) {
        double[] left =
                Bench.play(
                        Bench.machine(
                                "'mode':'"
                                        + mode
                                        + "','transport':{'components':[{'frequencyHz':"
                                        + rateHz
                                        + ",'peakPercent':0.05"
                                        + more
                                        + "}]}"),
                        48_000,
                        8.5,
                        Bench.sine(3150, 0))[0];
        double carrier = Bench.line(left, 48_000, 0.5, 8, 3150).peak();
        double above = Bench.line(left, 48_000, 0.5, 8, 3150 + rateHz).peak();
        double below = Bench.line(left, 48_000, 0.5, 8, 3150 - rateHz).peak();
        return (above + below) / 2 / carrier;
    }
}
