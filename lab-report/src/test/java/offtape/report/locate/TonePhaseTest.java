package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lateness read from the phase of tones whose lateness is known. */
class TonePhaseTest {

    private static final int RATE = Scene.RATE;
    private static final double HZ = 1000;

    /** A sine is a cosine that is late by a quarter of its period. */
    private static final double QUARTER_S = 0.25 / HZ;

    /**
     * A tone that plays at a speed from the recording's start on, each moment late by so much.
     *
     * @param late lateness in programme seconds at a programme time
     */
    private static double[] tone(double speed, DoubleUnaryOperator late, double noise) {
        double[] x = new double[8 * RATE];
        Random random = new Random(4);
        for (int i = 0; i < x.length; i++) {
            double programme = (double) i / RATE * speed;
            x[i] =
                    0.1 * Math.sin(2 * Math.PI * HZ * (programme - late.applyAsDouble(programme)))
                            + noise * random.nextGaussian();
        }
        return x;
    }

    private static List<TonePhase.Course> courses(double speed, double[]... x) {
        return courses(TimeMap.straight(0, 1 / speed, 8 * speed), x);
    }

    private static List<TonePhase.Course> courses(TimeMap map, double[]... x) {
        return new TonePhase(new MemoryAudio("r", RATE, x), map).courses(1, 5, HZ);
    }

    /** Wow of 2 Hz, and a step of speed of 5 % that the map knows. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.95, 1.05})
    void latenessIsInProgrammeSeconds(double speed) {
        DoubleUnaryOperator late = t -> 5e-5 * Math.sin(2 * Math.PI * 2 * t) + 1e-5;
        TonePhase.Course course = courses(speed, tone(speed, late, 0)).get(0);
        assertTrue(course.lateSeconds().length > 100);
        assertEquals(1.05, course.firstSeconds(), 1.0 / RATE);
        assertEquals(3.9, course.seconds(), course.stepSeconds());
        assertEquals(course.firstSeconds() + 7 * course.stepSeconds(), course.at(7), 1e-12);
        for (int k = 0; k < course.lateSeconds().length; k++) {
            double expected = QUARTER_S + late.applyAsDouble(course.at(k));
            assertEquals(expected, course.lateSeconds()[k], 2e-7, "" + k);
        }
    }

    /** Before and after the tone the map has another speed than the 0.8 it played at. */
    @Test
    void theSpeedIsThatOfTheStretchItself() {
        DoubleUnaryOperator late = t -> 5e-5 * Math.sin(2 * Math.PI * 2 * t);
        TimeMap map =
                new TimeMap(
                        new double[] {0, 0.9, 5.1, 9},
                        new double[] {0.9 / 0.8 - 0.9, 0.9 / 0.8, 5.1 / 0.8, 5.1 / 0.8 + 3.9});
        TonePhase.Course course = courses(map, tone(0.8, late, 0)).get(0);
        assertEquals(3.9, course.seconds(), course.stepSeconds());
        for (int k = 0; k < course.lateSeconds().length; k++) {
            double expected = QUARTER_S + late.applyAsDouble(course.at(k));
            assertEquals(expected, course.lateSeconds()[k], 2e-7, "" + k);
        }
    }

    /**
     * 250 Hz at 0.8 of the speed are 200 Hz, of which a fifth either side is passed and two fifths
     * and more are not: a tone as strong 90 Hz above, 90 dB down, turns the phase by 3.2e-5.
     */
    @Test
    void theBandOfALowToneGoesWithItsPitch() {
        double[] x = new double[8 * RATE];
        for (int i = 0; i < x.length; i++) {
            double turn = 2 * Math.PI * i / RATE;
            x[i] = 0.1 * Math.cos(200 * turn) + 0.1 * Math.sin(290 * turn);
        }
        MemoryAudio audio = new MemoryAudio("r", RATE, x);
        TonePhase.Course course =
                new TonePhase(audio, TimeMap.straight(0, 1 / 0.8, 6.4)).courses(1, 5, 250).get(0);
        assertEquals(3.9, course.seconds(), course.stepSeconds());
        for (double v : course.lateSeconds()) {
            assertEquals(0, v, 3.2e-5 / (2 * Math.PI * 250));
        }
    }

    /**
     * White noise of rms s in a band of b Hz either side has the power s²·4·b/rate beside that of
     * the tone's analytic signal, 0.1²; half of it is across, and turns the phase by its root over
     * 0.1. The band is 60 Hz, its edges fall to 120 Hz.
     */
    @Test
    void noiseIsToldFromTheTonesLevel() {
        double s = 0.01;
        TonePhase.Course course = courses(1, tone(1, t -> 0, s)).get(0);
        double least = s * Math.sqrt(2 * 2 * 60.0 / RATE) / 0.1 / (2 * Math.PI * HZ);
        double most = s * Math.sqrt(2 * 2 * 120.0 / RATE) / 0.1 / (2 * Math.PI * HZ);
        double sum = 0;
        for (double v : course.lateSeconds()) {
            sum += Math.pow(v - QUARTER_S, 2) / course.lateSeconds().length;
        }
        assertTrue(Math.sqrt(sum) > least && Math.sqrt(sum) < most, "rms " + Math.sqrt(sum));
        assertEquals(Math.sqrt(sum), course.sigmaSeconds(), 0.15 * Math.sqrt(sum));
    }

    @Test
    void whereNoToneIsHeardTheCourseIsEmpty() {
        double[] hiss = new Scene(8).withHiss(0.01).sound();
        List<TonePhase.Course> courses = courses(1, tone(1, t -> 0, 1e-4), hiss);
        assertTrue(courses.get(0).lateSeconds().length > 0);
        assertEquals(0, courses.get(1).lateSeconds().length);
        TonePhase.Course silent = courses(1, new double[8 * RATE]).get(0);
        assertEquals(0, silent.lateSeconds().length);
        assertEquals(Double.POSITIVE_INFINITY, silent.sigmaSeconds());
    }

    @Test
    void aToneWithoutRoomForItsBandIsNotFollowed() {
        MemoryAudio audio = new MemoryAudio("r", RATE, tone(1, t -> 0, 0));
        TonePhase phase = new TonePhase(audio, TimeMap.straight(0, 1, 8));
        assertEquals(List.of(), phase.courses(1, 5, 7900));
        assertEquals(1, phase.courses(1, 5, 7880).size());
        // what has no room at its speed has at nine tenths of it, and the other way round
        TonePhase slow = new TonePhase(audio, TimeMap.straight(0, 1 / 0.9, 7.2));
        assertEquals(1, slow.courses(1, 5, 8700).size());
        TonePhase fast = new TonePhase(audio, TimeMap.straight(0, 0.9, 8.8));
        assertEquals(List.of(), fast.courses(1, 5, 7200));
    }
}
