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

/** Short silences at 8 kHz in which no hum was found; the reference has a mean square of 1. */
class ResidueLimitsTest {

    private static final int RATE = 8000;

    private static double[] hiss(double db, double seconds) {
        Random random = new Random(5);
        double[] x = new double[(int) Math.round(seconds * RATE)];
        double rms = Math.pow(10, db / 20);
        for (int i = 0; i < x.length; i++) {
            x[i] = rms * random.nextGaussian();
        }
        return x;
    }

    private static Quantity residue(double[] x, DoubleUnaryOperator sound) {
        for (int i = 0; i < x.length; i++) {
            x[i] += sound.applyAsDouble((double) i / RATE);
        }
        return Residue.of(x, RATE, PowerDensity.of(x, RATE, 4096), Hum.unknown("No hum."), 1);
    }

    private static double sine(double db, double hz, double t) {
        return Math.sqrt(2) * Math.pow(10, db / 20) * Math.sin(2 * Math.PI * hz * t);
    }

    /** Twenty frames of 1024 samples, one each 512. */
    @ParameterizedTest
    @CsvSource({"10751, true", "10752, false"})
    void twentyFramesAreEnough(int samples, boolean tooShort) {
        Quantity found = residue(hiss(-50, (double) samples / RATE), t -> 0);
        assertEquals(tooShort, found.reason().contains("too short"));
    }

    /**
     * Hiss of −55 dB up to 4 kHz has −91 dB a hertz; a band of 58 Hz about 250 Hz −73.4 dB. Its 7.4
     * bins make a bound of 5.6 degrees of freedom, of which χ² exceeds 7.6 times their number in
     * one of 7 million frames (5·10⁻⁵ in 30 frames of 12 bands); the floor may have been found too
     * low by 4.5 deviations of 0.17. So 12 times the floor, 11 dB more, would have been seen: −62.5
     * dB, and some decibels more for bins that seem louder than the others by chance.
     */
    @Test
    void howFaintASoundWouldHaveBeenSeenIsSaid() {
        Quantity found = residue(hiss(-55, 2), t -> 0);
        String said = found.reason();
        int from = Integer.parseInt(said.replaceAll(".* from (-?[0-9]+) dB.*", "$1"));
        assertEquals(-61, from, 3);
    }

    /** A tone of −50 dB during two seconds of six has −50 − 4.77 dB over all of them. */
    @ParameterizedTest
    @CsvSource({"300", "990", "2500"})
    void aToneForAPartIsToldOverTheWhole(double hz) {
        Quantity found = residue(hiss(-65, 6), t -> t >= 2 && t < 4 ? sine(-50, hz, t) : 0);
        assertEquals(-54.77, found.value(), found.uncertainty());
        assertTrue(found.uncertainty() >= 0.3 && found.uncertainty() < 0.6, found.toString());
        assertEquals("dB", found.unit());
    }

    /**
     * The same in the middle of a short silence, where transforms of 0.5 s overlap and at its ends
     * do not, so that a line would read 24 000/(10·2048) times as much, 0.69 dB. Frames of 0.128 s
     * leave 0.18 dB of that.
     */
    @Test
    void theMiddleCountsNoMoreThanTheEnds() {
        Quantity found = residue(hiss(-65, 3), t -> t >= 0.75 && t < 2.25 ? sine(-40, 1003, t) : 0);
        assertEquals(-43.01 + 0.18, found.value(), 0.1);
        assertTrue(found.uncertainty() < 0.5, found.toString());
    }

    /**
     * Two tones in unlike bands, one after the other, are added: −50 dB twice over a third each.
     */
    @Test
    void bandsAreAdded() {
        Quantity found =
                residue(
                        hiss(-65, 3),
                        t -> t < 1 ? sine(-50, 400, t) : t < 2 ? sine(-50, 1600, t) : 0);
        assertEquals(-51.76, found.value(), 0.3);
    }

    /** Tones that never stop are seen as lines: 1003 and 1503 Hz of −70 dB, −67 dB together. */
    @Test
    void steadyTonesAreAdded() {
        Quantity found = residue(hiss(-65, 3), t -> sine(-70, 1003, t) + sine(-70, 1503, t));
        assertEquals(-66.99, found.value(), 0.3);
        assertTrue(found.uncertainty() < 1, found.toString());
    }

    /**
     * What is fainter than −100 dB re reference is left alone, steady or for a part of the time.
     */
    @ParameterizedTest
    @CsvSource({"-98, true", "-102, false"})
    void theFaintestIsLeftAlone(double db, boolean told) {
        Quantity steady = residue(hiss(-130, 3), t -> sine(db, 1003, t));
        assertEquals(told, steady.isKnown(), steady.toString());
        Quantity part = residue(hiss(-130, 3), t -> t >= 1 && t < 2 ? sine(db, 990, t) : 0);
        assertEquals(told, part.isKnown(), part.toString());
    }

    /** Where even noise is missing the path is digital. */
    @Test
    void zerosAreDigitalSilence() {
        assertEquals(
                "The silence of the recording is digital silence.",
                residue(new double[2 * RATE], t -> 0).reason());
    }

    /** All bands that grow together by 6 dB are hiss of another level. */
    @Test
    void hissThatGrowsIsNoSound() {
        double[] x = hiss(-60, 3);
        for (int i = RATE; i < 2 * RATE; i++) {
            x[i] *= 2;
        }
        assertFalse(residue(x, t -> 0).isKnown());
    }
}
