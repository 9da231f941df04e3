package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunningFiguresTest {

    private static final double NO = Double.NaN;

    /** 0 … 10 in stretches of two, four at most: 0-3, 4-7, 8-10 once they have joined. */
    @Test
    void extremesJoinWhenThereAreTooMany() {
        Extremes few = new Extremes(2, 4);
        for (int i = 0; i <= 10; i++) {
            few.add(i);
        }
        assertArrayEquals(new double[] {0, 4, 8}, few.lowest());
        assertArrayEquals(new double[] {3, 7, 10}, few.highest());
        assertArrayEquals(new double[] {2, 6, 9.5}, few.middles());
        assertEquals(0, new Extremes(2, 4).stretches());
    }

    @Test
    void extremesAreOfEachStretchByItself() {
        Extremes few = new Extremes(3, 4);
        for (double v : new double[] {-5, -7, -6, 4, 2, 3, -1}) {
            few.add(v);
        }
        assertArrayEquals(new double[] {-7, 2, -1}, few.lowest());
        assertArrayEquals(new double[] {-5, 4, -1}, few.highest());
        assertArrayEquals(new double[] {1.5, 4.5, 6.5}, few.middles());
    }

    /** Sixteen values in four stretches of four, then one more: two of eight and its own. */
    @Test
    void extremesJoinAgainAndAgain() {
        Extremes few = new Extremes(1, 4);
        for (int i = 0; i < 16; i++) {
            few.add(-i);
        }
        assertArrayEquals(new double[] {-3, -7, -11, -15}, few.lowest());
        assertArrayEquals(new double[] {0, -4, -8, -12}, few.highest());
        few.add(5);
        assertArrayEquals(new double[] {-7, -15, 5}, few.lowest());
        assertArrayEquals(new double[] {0, -8, 5}, few.highest());
        assertArrayEquals(new double[] {4, 12, 16.5}, few.middles());
    }

    @Test
    void gapsAreBridgedByStraightLines() {
        Bridge bridge = new Bridge();
        double[] all =
                joined(
                        bridge.next(new double[] {NO, 1, NO}),
                        bridge.next(new double[] {NO, NO}),
                        bridge.next(new double[] {5, 6, NO}),
                        bridge.rest());
        assertArrayEquals(new double[] {1, 1, 2, 3, 4, 5, 6, 6}, all, 1e-12);
        assertEquals(3, bridge.gaps());
        assertEquals(5, bridge.bridgedSamples());
        assertArrayEquals(new double[] {0, 0}, lost());
    }

    private static double[] lost() {
        Bridge bridge = new Bridge();
        assertEquals(0, bridge.next(new double[] {NO, NO}).length);
        return bridge.rest();
    }

    /** 0.1 % a minute for a minute, alone and under wow that would hide it. */
    @ParameterizedTest
    @CsvSource({"0, 1", "0.3, 0.5", "0.3, 0.9", "0.3, 3.1", "0.1, 0.35"})
    void driftIsToldFromWow(double wow, double hz) {
        double rate = 1000;
        double[] x = new double[60_000];
        Arrays.setAll(
                x, i -> 0.1 * i / x.length + wow * Math.sin(2 * Math.PI * hz * i / rate + 0.7));
        Drift drift = new Drift(rate);
        drift.next(Arrays.copyOf(x, 20_001));
        drift.next(Arrays.copyOfRange(x, 20_001, x.length));
        System.out.printf(
                "drift of 0.1 %% under %.1f %% of wow at %.2f Hz: %.4f %%%n",
                wow, hz, drift.reach());
        assertEquals(0.1, drift.reach(), 0.1 * 0.1 + 0.0005);
    }

    /**
     * Wow of 0.25 Hz for 10 s is 2.5 periods: a mean of 2/(2.5·2π) of its height is left. Hann's
     * window leaves 1/(1 − 2.5²) of that, to the other side, so that the two differ by 1.19 times
     * the error.
     */
    @Test
    void theMeanKnowsWhatWowDoesToIt() {
        MeanDeviation mean = new MeanDeviation(10_000);
        double[] x = new double[10_000];
        Arrays.setAll(x, i -> 3 + 0.1 * Math.sin(2 * Math.PI * 0.25 * i / 1000));
        mean.next(x);
        double error = 0.1 * 2 / (2.5 * 2 * Math.PI);
        assertEquals(3 + error, mean.value(), 1e-4);
        assertTrue(mean.uncertainty() > error && mean.uncertainty() < 1.5 * error);
    }

    private static double[] joined(double[]... parts) {
        return Arrays.stream(parts).flatMapToDouble(DoubleStream::of).toArray();
    }
}
