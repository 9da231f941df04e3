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
        TimeMap map = TimeMap.straight(0, 1 / speed, 8 * speed);
        return new TonePhase(new MemoryAudio("r", RATE, x), map).courses(1, 5, HZ);
    }

    /** Wow of 2 Hz, and a step of speed of 5 % that the map knows. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.95, 1.05})
    void latenessIsInProgrammeSeconds(double speed) {
        DoubleUnaryOperator late = t -> 5e-5 * Math.sin(2 * Math.PI * 2 * t) + 1e-5;
        TonePhase.Course course = courses(speed, tone(speed, late, 0)).get(0);
        assertTrue(course.lateSeconds().length > 100);
        assertTrue(course.firstSeconds() >= 1.05 && course.firstSeconds() < 1.2);
        assertEquals(3.9, course.seconds(), 0.2);
        assertEquals(course.firstSeconds() + 7 * course.stepSeconds(), course.at(7), 1e-12);
        for (int k = 0; k < course.lateSeconds().length; k++) {
            double expected = QUARTER_S + late.applyAsDouble(course.at(k));
            assertEquals(expected, course.lateSeconds()[k], 2e-7, "" + k);
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
        assertEquals(0, courses(1, new double[8 * RATE]).get(0).lateSeconds().length);
    }

    @Test
    void aToneWithoutRoomForItsBandIsNotFollowed() {
        MemoryAudio audio = new MemoryAudio("r", RATE, tone(1, t -> 0, 0));
        TonePhase phase = new TonePhase(audio, TimeMap.straight(0, 1, 8));
        assertEquals(List.of(), phase.courses(1, 5, 7900));
        assertEquals(1, phase.courses(1, 5, 7880).size());
    }
}
