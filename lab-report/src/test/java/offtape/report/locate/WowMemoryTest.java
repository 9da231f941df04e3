package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How far lateness wanders, under steady wow, random wow and what is assumed. */
class WowMemoryTest {

    private static WowMemory of(double stepSeconds, double[] late) {
        return WowMemory.of(new TonePhase.Course(3, stepSeconds, late, 1e-7));
    }

    /**
     * Lateness a·sin(2πft) changes over d seconds by 2a·sin(πfd)·cos(…), in the mean square by
     * 2a²·sin²(πfd): 2a² over half a turn, a² over a quarter, nothing over a whole one. Two hours
     * have to do with the memory of ten minutes.
     */
    @ParameterizedTest
    @ValueSource(ints = {60, 7200})
    void aLineIsRememberedAsItSwings(int seconds) {
        double a = 1e-4;
        double[] late = new double[25 * seconds];
        Arrays.setAll(late, i -> a * Math.sin(2 * Math.PI * 0.5 * 0.04 * i));
        WowMemory memory = of(0.04, late);
        assertEquals(2, memory.variance(1) / (a * a), 0.01);
        assertEquals(1, memory.variance(0.5) / (a * a), 0.01);
        assertEquals(0, memory.variance(2) / (a * a), 0.01);
        assertEquals(memory.variance(0.3), memory.variance(-0.3));
    }

    /** The same between the values of the table, which is sixteen times finer than the tone. */
    @Test
    void anySpanIsTold() {
        double a = 1e-4;
        double[] late = new double[1200];
        Arrays.setAll(late, i -> a * Math.sin(2 * Math.PI * 0.5 * 0.05 * i));
        WowMemory memory = of(0.05, late);
        for (double d = 0.2; d < 0.8; d += 0.0007) {
            double wanted = 2 * Math.pow(Math.sin(Math.PI * 0.5 * d), 2);
            assertEquals(wanted, memory.variance(d) / (a * a), 0.012, "over " + d);
        }
    }

    /** A motion that is played backwards wanders as far. */
    @Test
    void backAndForthAreAlike() {
        double[] late = new Random(3).doubles(24, -1e-5, 1e-5).toArray();
        double[] back = new double[late.length];
        Arrays.setAll(back, i -> late[late.length - 1 - i]);
        for (double d : new double[] {0.1, 0.3, 0.7}) {
            double forth = of(0.1, late).variance(d);
            assertEquals(forth, of(0.1, back).variance(d), 1e-9 * forth);
        }
    }

    /**
     * If nothing is heard, speed is taken to wander by 0.3 % rms, evenly from 0.5 to 10 Hz: its
     * lateness has the density S/(2πf)², of which a change over d seconds keeps 4·sin²(πfd). Over
     * spans far longer than a swing that is 2·S/(2π)²·(1/0.5 − 1/10). The lower edge is kept to a
     * line of 0.012 Hz, a fortieth of it.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.1, 0.73, 1.4, 5})
    void withoutAToneWowIsAssumed(double seconds) {
        double density = 9e-6 / 9.5;
        double sum = 0;
        double step = 1e-3;
        for (double f = 0.5 + step / 2; f < 10; f += step) {
            double change = 2 * Math.sin(Math.PI * f * seconds) / (2 * Math.PI * f);
            sum += density * change * change * step;
        }
        assertEquals(sum, WowMemory.assumed().variance(seconds), sum / 40);
    }

    /** Nothing is known beyond the longest span that was looked at but that it wanders as far. */
    @Test
    void overLongSpansItWandersNoFurther() {
        double most = 2 * 9e-6 / 9.5 / (4 * Math.PI * Math.PI) * (1 / 0.5 - 1 / 10.0);
        for (double seconds : new double[] {40.9, 41, 1e3, 1e12}) {
            assertEquals(most, WowMemory.assumed().variance(seconds), 0.03 * most);
        }
    }
}
