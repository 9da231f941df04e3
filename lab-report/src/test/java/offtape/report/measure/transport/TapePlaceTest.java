package offtape.report.measure.transport;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TapePlaceTest {

    private static final double RATE = 500;
    private static final int COUNT = 2501;

    private static double[] values(int count, DoubleUnaryOperator f, double rate) {
        double[] x = new double[count];
        Arrays.setAll(x, i -> f.applyAsDouble(i / rate));
        return x;
    }

    /** As many places as fit next to the number of values over the delay, and at least one. */
    @ParameterizedTest
    @CsvSource({"0.1231, 62, 503.6556", "0.1, 50, 500", "0.0305, 15, 491.8033", "0.0004, 1, 2500"})
    void aWholeNumberOfPlacesLiesBetweenTheHeads(double delay, int lag, double rate) {
        TapePlace place = TapePlace.along(new double[COUNT], RATE, delay);
        assertEquals(lag, place.lag());
        assertEquals(rate, place.placeRateHz(), 1e-4);
    }

    /** Five seconds of even motion are 5 · 503.66 places and the first. */
    @Test
    void evenMotionIsResampled() {
        TapePlace place = TapePlace.along(new double[COUNT], RATE, 0.1231);
        DoubleUnaryOperator sound = t -> Math.sin(2 * Math.PI * 20 * t + 0.3);
        double[] overTime = values(COUNT, sound, RATE);
        double[] overPlace = place.toPlaces(overTime);
        assertEquals(2519, overPlace.length);
        for (int i = 60; i < overPlace.length - 60; i++) {
            assertEquals(sound.applyAsDouble(i / place.placeRateHz()), overPlace[i], 1e-4);
        }
        double[] back = place.toTime(overPlace);
        assertEquals(COUNT, back.length);
        for (int i = 100; i < COUNT - 100; i++) {
            assertEquals(overTime[i], back[i], 1e-4);
        }
    }

    /**
     * The tape moves with v(t) = 1 + 0.02·sin ωt at 2 Hz, so that it is at x(t) = t + 0.02/ω·(1 −
     * cos ωt) (five seconds are whole periods). What lies on the tape as g(x) is heard as g(x(t)).
     * Without the wavering it would be off by up to 2 · 0.02/12.6 · 2π · 7 = 0.14.
     */
    @Test
    void waveringMotionIsFollowed() {
        double omega = 4 * Math.PI;
        DoubleUnaryOperator at = t -> t + 0.02 / omega * (1 - Math.cos(omega * t));
        DoubleUnaryOperator onTape = x -> Math.cos(2 * Math.PI * 7 * x + 1);
        double[] deviation = values(COUNT, t -> 2 * Math.sin(omega * t), RATE);
        TapePlace place = TapePlace.along(deviation, RATE, 0.1);
        double[] overTime = values(COUNT, t -> onTape.applyAsDouble(at.applyAsDouble(t)), RATE);
        double[] overPlace = place.toPlaces(overTime);
        for (int i = 60; i < overPlace.length - 60; i++) {
            assertEquals(onTape.applyAsDouble(i / RATE), overPlace[i], 5e-4, "place " + i);
        }
        double[] back = place.toTime(values(COUNT, onTape, RATE));
        for (int i = 60; i < COUNT - 60; i++) {
            assertEquals(overTime[i], back[i], 5e-4, "time " + i);
        }
    }

    /** Turned over about its end value, a straight line goes on straight and a constant stays. */
    @Test
    void theEndsDoNotBend() {
        TapePlace place = TapePlace.along(new double[COUNT], RATE, 0.0305);
        double[] flat = place.toPlaces(values(COUNT, t -> 4, RATE));
        double[] rising = place.toPlaces(values(COUNT, t -> t, RATE));
        double[] falling = place.toPlaces(values(COUNT, t -> 5 - t, RATE));
        int last = flat.length - 1;
        for (int i = 0; i < 40; i++) {
            assertEquals(4, flat[i], 1e-3);
            assertEquals(4, flat[last - i], 1e-3);
            assertEquals(i / place.placeRateHz(), rising[i], 1e-5);
            assertEquals(5 - (last - i) / place.placeRateHz(), falling[last - i], 1e-4);
        }
    }

    /**
     * A constant deviation is no wavering: the tape just moves at another mean speed. At the end it
     * would be 0.05 s ahead, a turn of 2.8 rad.
     */
    @Test
    void aConstantDeviationMovesNoPlace() {
        double[] deviation = values(COUNT, t -> 1, RATE);
        double[] sound = values(COUNT, t -> Math.sin(2 * Math.PI * 9 * t), RATE);
        double[] places = TapePlace.along(deviation, RATE, 0.1).toPlaces(sound);
        for (int i = 60; i < places.length - 60; i++) {
            assertEquals(sound[i], places[i], 2e-3);
        }
    }

    @Test
    void aSingleValueStays() {
        TapePlace place = TapePlace.along(new double[1], RATE, 0.1);
        assertEquals(1, place.toPlaces(new double[] {7}).length);
        assertEquals(7, place.toPlaces(new double[] {7})[0], 1e-3);
        assertEquals(7, place.toTime(new double[] {7})[0], 1e-3);
    }
}
