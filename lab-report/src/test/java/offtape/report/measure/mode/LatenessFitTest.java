package offtape.report.measure.mode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.report.locate.LateMoment;
import org.junit.jupiter.api.Test;

/** A line through moments of a programme of four minutes. */
class LatenessFitTest {

    private static final double[][] PARTS = {
        {0.3, 0.3, 1}, {20, 24, 8}, {40, 44, 8}, {100, 160, 60}, {190, 194, 8}, {230, 230, 1}
    };

    /** Lateness of 160 ms and 7 ppm, and what wow adds. */
    private static List<LateMoment> moments(Random random, double sigma) {
        double[] phase = random.doubles(3, 0, 2 * Math.PI).toArray();
        double[] hz = {0.09, 0.4, 1.3};
        List<LateMoment> moments = new ArrayList<>();
        for (double[] part : PARTS) {
            for (int k = 0; k < part[2]; k++) {
                double at = part[0] + (part[1] - part[0]) * k / part[2];
                double wow = 0;
                for (int i = 0; i < hz.length; i++) {
                    wow += sigma * Math.sin(2 * Math.PI * hz[i] * at + phase[i]);
                }
                moments.add(new LateMoment("part-" + part[0], at, 0.16 + 7e-6 * at + wow));
            }
        }
        return moments;
    }

    @Test
    void withoutWowItIsTheLine() {
        LatenessFit fit = LatenessFit.of(moments(new Random(1), 0)).orElseThrow();
        assertEquals(0.16, fit.startSeconds(), 1e-12);
        assertEquals(7, fit.slopePpm(), 1e-6);
        assertEquals(0.16 + 7e-6 * 100, fit.at(100), 1e-12);
        assertEquals(0.16, fit.withSlope(7).startSeconds(), 1e-12);
    }

    /** Wow of 50 µs at three rates, the slowest slower than most parts last: 200 draws. */
    @Test
    void itsUncertaintiesHold() {
        Random random = new Random(2);
        int starts = 0;
        int slopes = 0;
        int fixed = 0;
        for (int i = 0; i < 200; i++) {
            LatenessFit fit = LatenessFit.of(moments(random, 5e-5)).orElseThrow();
            LatenessFit known = fit.withSlope(7);
            starts += Math.abs(fit.startSeconds() - 0.16) < fit.startUncertaintySeconds() ? 1 : 0;
            slopes += Math.abs(fit.slopePpm() - 7) < fit.slopeUncertaintyPpm() ? 1 : 0;
            fixed +=
                    Math.abs(known.startSeconds() - 0.16) < known.startUncertaintySeconds() ? 1 : 0;
        }
        String held = starts + ", " + slopes + ", " + fixed + " of 200";
        System.out.println("lateness: start, slope, start of a known slope held in " + held);
        assertTrue(starts >= 180 && slopes >= 180 && fixed >= 180, held);
    }

    @Test
    void oneMarkerTellsNoLine() {
        LateMoment one = new LateMoment("start", 0.3, 0.1);
        assertTrue(LatenessFit.of(List.of(one, one, one)).isEmpty());
        assertTrue(LatenessFit.of(List.of()).isEmpty());
    }
}
