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

    private static List<LateMoment> parts(int each, double... lateMs) {
        List<LateMoment> moments = new ArrayList<>();
        for (int p = 0; p < lateMs.length; p++) {
            for (int k = 0; k < each; k++) {
                moments.add(new LateMoment("part " + p, 10 * p, lateMs[p] / 1000));
            }
        }
        return moments;
    }

    /**
     * Late by 0, 3 and 0 ms at 0, 10 and 20 s: a level line at 1 ms, off by 1, 2 and 1 ms, the sum
     * of squares 6 ms² of one degree of freedom (2 µs more are nothing). Shares of the slope are
     * ∓1/20, of the start 5/6, 1/3 and −1/6, the sum of their squares 5/6. Three parts make a
     * factor of 2 · (1 + 2/3): 10/3 · √(6 / 200) = 0.57735 ms/s and 10/3 · √(6 · 5/6) = 7.4536 ms.
     */
    @Test
    void scatterAboutTheLineIsItsUncertainty() {
        LatenessFit fit = LatenessFit.of(parts(1, 0, 3, 0)).orElseThrow();
        assertEquals(1e-3, fit.startSeconds(), 1e-12);
        assertEquals(0, fit.slopePpm(), 1e-9);
        assertEquals(577.350, fit.slopeUncertaintyPpm(), 1e-3);
        assertEquals(7.45356e-3, fit.startUncertaintySeconds(), 1e-7);
    }

    /**
     * Four moments alike in each part: the parts' own sums, 5/6 · 1, 1/3 · 2 and 1/6 · 1 ms, whose
     * squares are 7/6 ms², times 3/2 for three parts, are more than 24 ms² / 10 · 5/24 = 0.5 ms² of
     * single moments: 10/3 · √(7/4) = 4.4096 ms. Of the slope both outer parts pull alike and
     * against each other: 2 · (1/20)² · 3/2 ms², 10/3 · √0.0075 = 0.28868 ms/s.
     */
    @Test
    void momentsOfOnePartScatterTogether() {
        LatenessFit fit = LatenessFit.of(parts(4, 0, 3, 0)).orElseThrow();
        assertEquals(4.40959e-3, fit.startUncertaintySeconds(), 1e-8);
        assertEquals(288.675, fit.slopeUncertaintyPpm(), 1e-3);
    }

    /**
     * Four moments each at 0, 10 and 50 s, late by 0, 3 and 0 ms: about 20 s and 1 ms the slope is
     * −30/1400 ms/s, the start 1 + 20 · 30/1400 ms. The parts are off by −20, 25 and −5 fourteenths
     * of a millisecond; their shares of the start are 1/3 − 20·(t − 20)/1400, that is 26, 20 and −4
     * parts of 42. The sum of squares of (−520, 500, 20)/588 is 1.506317 ms², so 10/3 · √(1.506317
     * · 3/2) = 5.01051 ms.
     */
    @Test
    void theStartHangsMostOnTheFirstParts() {
        List<LateMoment> moments = new ArrayList<>();
        for (LateMoment m : parts(4, 0, 3, 0)) {
            double at = m.programmeSeconds() > 15 ? 50 : m.programmeSeconds();
            moments.add(new LateMoment(m.part(), at, m.lateSeconds()));
        }
        LatenessFit fit = LatenessFit.of(moments).orElseThrow();
        assertEquals(1e-3 + 20 * 30e-3 / 1400, fit.startSeconds(), 1e-12);
        assertEquals(-30e3 / 1400, fit.slopePpm(), 1e-6);
        assertEquals(5.01051e-3, fit.startUncertaintySeconds(), 1e-7);
    }

    /**
     * With a slope of 0 that is known, each share is 1/3: 6 ms² / 2 / 3 = 1 ms² of single moments,
     * and (1 + 4 + 1) / 9 · 3/2 = 1 ms² of parts; with four moments each, of parts alone.
     */
    @Test
    void aKnownSlopeLeavesTheMean() {
        for (int each : new int[] {1, 4}) {
            LatenessFit fit = LatenessFit.of(parts(each, 0, 3, 0)).orElseThrow().withSlope(0);
            assertEquals(1e-3, fit.startSeconds(), 1e-12);
            assertEquals(0, fit.slopePpm());
            assertEquals(0, fit.slopeUncertaintyPpm());
            assertEquals(10e-3 / 3, fit.startUncertaintySeconds(), 1e-8);
        }
    }

    /** Without any scatter each moment is known within 2 µs: 10/3 · 2 µs · √(5/6) = 6.0858 µs. */
    @Test
    void aMomentIsNeverExact() {
        LatenessFit fit = LatenessFit.of(parts(1, 1, 2, 3)).orElseThrow();
        assertEquals(100, fit.slopePpm(), 1e-9);
        assertEquals(6.0858e-6, fit.startUncertaintySeconds(), 1e-10);
        assertEquals(10.0 / 3 * 2 / Math.sqrt(200), fit.slopeUncertaintyPpm(), 1e-9);
    }

    /** Three moments of two parts, five seconds apart. */
    @Test
    void aLineTakesThreeMomentsOfTwoPartsApart() {
        LateMoment first = new LateMoment("a", 1, 0.1);
        LateMoment far = new LateMoment("b", 6, 0.1);
        LateMoment near = new LateMoment("b", 5.99, 0.1);
        assertTrue(LatenessFit.of(List.of(first, first, far)).isPresent());
        assertTrue(LatenessFit.of(List.of(first, first, near)).isEmpty());
        assertTrue(LatenessFit.of(List.of(first, far)).isEmpty());
        LateMoment same = new LateMoment("a", 6, 0.1);
        assertTrue(LatenessFit.of(List.of(first, first, same)).isEmpty());
    }
}
