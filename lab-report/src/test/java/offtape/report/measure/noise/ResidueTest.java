package offtape.report.measure.noise;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.PowerDensity;
import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Silences with and without something left in them. The reference is a sine of mean square 1. */
class ResidueTest {

    private static final int RATE = 44_100;
    private static final double SECONDS = 6;

    private static double amplitude(double db) {
        return Math.sqrt(2) * Math.pow(10, db / 20);
    }

    /**
     * Hiss of a level up to half the rate, white or with one pole more: 6 dB an octave down from
     * some frequency, or up to it.
     */
    private static double[] hiss(double db, double pole, double seconds, long seed) {
        Random random = new Random(seed);
        double[] x = new double[(int) (seconds * RATE)];
        double last = 0;
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            last = random.nextGaussian() + pole * last;
            x[i] = last;
            sum += last * last / x.length;
        }
        double scale = Math.pow(10, db / 20) / Math.sqrt(sum);
        for (int i = 0; i < x.length; i++) {
            x[i] *= scale;
        }
        return x;
    }

    private static double[] add(double[] x, DoubleUnaryOperator sound) {
        for (int i = 0; i < x.length; i++) {
            x[i] += sound.applyAsDouble((double) i / RATE);
        }
        return x;
    }

    private static Quantity residue(double[] x) {
        return Residue.of(
                x, RATE, PowerDensity.of(x, RATE, 1 << 14), HumSearch.find(x, RATE, 1), 1);
    }

    /** Lines of mains whose frequency drifts, as strong as they come. */
    private static DoubleUnaryOperator hum(double hz, double driftHzPerS, double db, int lines) {
        double[] cos = new double[lines + 1];
        double[] sin = new double[lines + 1];
        for (int m = 1; m <= lines; m++) {
            cos[m] = amplitude(db) * Math.cos(m * m) / m;
            sin[m] = amplitude(db) * Math.sin(m * m) / m;
        }
        return t -> {
            double phase = 2 * Math.PI * (hz * t + driftHzPerS * t * t / 2);
            double stepRe = Math.cos(phase);
            double stepIm = Math.sin(phase);
            double re = 1;
            double im = 0;
            double sum = 0;
            for (int m = 1; m <= lines; m++) {
                double next = re * stepRe - im * stepIm;
                im = re * stepIm + im * stepRe;
                re = next;
                // Re and im are those of the phase m times; m² is added to it.
                sum += im * cos[m] + re * sin[m];
            }
            return sum;
        };
    }

    private static void assertNothing(double[] x, String what) {
        Quantity found = residue(x);
        assertFalse(found.isKnown(), () -> what + ": " + found);
        assertTrue(found.reason().startsWith("Nothing but hiss and hum"), found.reason());
    }

    /** The chance of one false alarm in them is 0.4 % at the most. */
    @Test
    void hissAloneIsNoRecording() {
        double[] poles = {0, 0.5, 0.95, -0.6};
        for (int i = 0; i < 40; i++) {
            double seconds = 1.5 + i % 3;
            double[] x = hiss(-45 - i % 30, poles[i % 4], seconds, 100 + i);
            if (i % 5 == 1) {
                add(x, hum(49.6 + 0.11 * (i % 8), 0.02 * (i % 4 - 2), -50 - i % 20, 12));
            } else if (i % 5 == 3) {
                add(x, hum(59.7 + 0.09 * (i % 7), 0.03 * (i % 3 - 1), -40 - i % 30, 10));
            }
            assertNothing(x, "silence " + i);
        }
    }

    /** Slow swells of ± 1.5 dB and dropouts of 20 dB that last 60 ms, three in a second. */
    @Test
    void unsteadyHissIsNoRecording() {
        for (int seed = 0; seed < 4; seed++) {
            double[] x = hiss(-55, 0.3 * seed, SECONDS, seed);
            for (int i = 0; i < x.length; i++) {
                double t = (double) i / RATE;
                double swell = 1.5 * Math.sin(2 * Math.PI * (0.4 + 0.5 * seed) * t);
                double gone = t * 3 % 1 < 0.18 ? -20 : 0;
                x[i] *= Math.pow(10, (swell + gone) / 20);
            }
            assertNothing(x, "seed " + seed);
        }
    }

    /** A tone of −55 dB for a third of the silence has −55 − 4.77 dB over all of it. */
    @ParameterizedTest
    @ValueSource(doubles = {440, 1000, 3150, 8000})
    void aToneForAPartIsFound(double hz) {
        double[] x =
                add(
                        hiss(-58, 0, SECONDS, 11),
                        t -> t > 2 && t < 4 ? amplitude(-55) * Math.sin(2 * Math.PI * hz * t) : 0);
        assertHolds(-55 - 4.771, residue(x), 1);
    }

    /** From 300 Hz to 8 kHz in three seconds of six, exponentially, at −50 dB: −53.0 dB. */
    @Test
    void aSweepIsFound() {
        double rate = Math.log(8000 / 300.0) / 3;
        double[] x =
                add(
                        hiss(-58, 0.5, SECONDS, 12),
                        t ->
                                t > 1 && t < 4
                                        ? amplitude(-50)
                                                * Math.sin(
                                                        2
                                                                * Math.PI
                                                                * 300
                                                                / rate
                                                                * Math.exp(rate * (t - 1)))
                                        : 0);
        assertHolds(-50 - 3.010, residue(x), 1);
    }

    /**
     * Notes of four partials that decay, all the time: what of them never falls silent counts as
     * noise, so that the figure may be a little low.
     */
    @ParameterizedTest
    @CsvSource({"-50, -58", "-60, -58"})
    void musicIsFound(double musicDb, double hissDb) {
        double[] music = music();
        double power = 0;
        for (double v : music) {
            power += v * v / music.length;
        }
        double scale = Math.pow(10, musicDb / 20) / Math.sqrt(power);
        double[] x = hiss(hissDb, 0, SECONDS, 13);
        for (int i = 0; i < x.length; i++) {
            x[i] += scale * music[i];
        }
        Quantity found = residue(x);
        System.out.printf("music of %.0f dB in %.0f dB: %s%n", musicDb, hissDb, found);
        assertTrue(found.isKnown(), found.reason());
        assertEquals(musicDb, found.value(), Math.min(1.5, found.uncertainty()));
    }

    /** Notes are followed until they are 108 dB down, 2.5 s. */
    private static double[] music() {
        double[] x = new double[(int) (SECONDS * RATE)];
        Random random = new Random(3);
        for (double start = 0; start < SECONDS; start += 0.21) {
            double turn = 2 * Math.PI * 220 * Math.pow(2, random.nextInt(30) / 12.0) / RATE;
            int from = (int) (start * RATE);
            for (int i = from; i < Math.min(x.length, from + 2.5 * RATE); i++) {
                double sin = Math.sin(turn * (i - from));
                double twice = 2 * Math.cos(turn * (i - from));
                double last = 0;
                double note = 0;
                for (int m = 1; m <= 4; m++) {
                    note += sin / m;
                    // sin (m + 1)φ = 2·cos φ·sin mφ − sin (m − 1)φ
                    double next = twice * sin - last;
                    last = sin;
                    sin = next;
                }
                x[i] += note * Math.exp(-5.0 * (i - from) / RATE);
            }
        }
        return x;
    }

    /** A line that never stops and lies between the multiples of the mains: 1023 Hz at −70 dB. */
    @Test
    void aSteadyLineIsFoundBesideHum() {
        double[] x =
                add(
                        add(hiss(-58, 0, SECONDS, 14), hum(50.02, 0, -50, 12)),
                        t -> amplitude(-70) * Math.sin(2 * Math.PI * 1023 * t));
        assertHolds(-70, residue(x), 1);
    }

    /**
     * A test tone all the time whose 3150 Hz are 63 times 50 Hz: it wavers by 0.05 %, as tape does,
     * or lies beside the mains' multiple. A line of the mains at that place does neither.
     */
    @Test
    void aTestToneIsToldFromHighOrdersOfTheMains() {
        DoubleUnaryOperator wavering =
                t -> {
                    double wow = 0.0005 / (2 * Math.PI * 0.7) * Math.cos(2 * Math.PI * 0.7 * t);
                    return amplitude(-60) * Math.sin(2 * Math.PI * 3150 * (t - wow));
                };
        double[] moving = add(add(hiss(-58, 0, SECONDS, 15), hum(50, 0, -50, 12)), wavering);
        assertHolds(-60, residue(moving), 1);
        double[] beside =
                add(
                        add(hiss(-58, 0, SECONDS, 16), hum(50.02, 0, -50, 12)),
                        t -> amplitude(-60) * Math.sin(2 * Math.PI * 3150 * t));
        assertHolds(-60, residue(beside), 1);
        double[] mains = add(hiss(-58, 0, SECONDS, 17), hum(50.02, 0, -40, 70));
        assertNothing(mains, "buzz");
        double[] drifting = add(hiss(-58, 0, SECONDS, 18), hum(50.02, 0.004, -40, 70));
        assertNothing(drifting, "drifting buzz");
    }

    @Test
    void reasonsAreGiven() {
        assertEquals(
                "The silence of the recording is digital silence.",
                residue(new double[3 * RATE]).reason());
        assertTrue(residue(hiss(-50, 0, 0.8, 1)).reason().contains("too short"));
    }

    private static void assertHolds(double truth, Quantity found, double widest) {
        assertTrue(found.isKnown(), found.reason());
        System.out.printf("%.2f dB: %s%n", truth, found);
        assertEquals(truth, found.value(), found.uncertainty());
        assertTrue(found.uncertainty() <= widest, found.toString());
    }
}
