package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.LateMoment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneLatenessTest {

    private static final double HZ = 400;
    private static final double SECONDS = 8;

    /** A tone from 1 s to 6.5 s, with a phase of its own. */
    private static final Cue.Tone TONE = Returns.tone(1, 5.5, HZ, 0);

    private static double sent(double t) {
        return t < 1 || t > 6.5 ? 0 : 0.1 * Math.sin(2 * Math.PI * HZ * t + 0.8);
    }

    /** What comes back so late: at a time of the recording, where late changes evenly. */
    private static double[] returned(double at0, double slope, double gain) {
        return Returns.sound(SECONDS, t -> gain * sent((t - at0) / (1 + slope)));
    }

    private static List<LateMoment> moments(
            List<Integer> signs, DoubleUnaryOperator expected, double[]... channels) {
        return ToneLateness.of(
                Returns.of(
                        List.of(TONE),
                        Returns.sound(SECONDS, ToneLatenessTest::sent),
                        signs,
                        channels),
                TONE,
                expected);
    }

    /**
     * 5.3 s, clear of both ends, hold five moments about the middles of 190 samples at 8000/42 Hz,
     * which are a second but for 2.5 ms, from 1.1 s on. The return is 0.03 s late at its beginning
     * and 50 µs more with each second; 0.4 ms more than expected, which is 0.16 of a period.
     */
    @ParameterizedTest
    @CsvSource({"0", "0.0004", "-0.0004"})
    void everySecondTellsHowLateItIs(double unexpected) {
        double[] x = returned(0.03 + unexpected, 5e-5, 1);
        List<LateMoment> moments = moments(List.of(1), t -> 0.03 + 5e-5 * t, x);
        assertEquals(5, moments.size());
        for (int k = 0; k < 5; k++) {
            LateMoment m = moments.get(k);
            assertEquals(1.1 + (190 * k + 94.5) * 42 / 8000, m.programmeSeconds(), 1e-3);
            double truth = 0.03 + unexpected + 5e-5 * m.programmeSeconds();
            assertEquals(truth, m.lateSeconds(), 1e-7);
            assertEquals(TONE.id(), m.part());
        }
    }

    /** Several periods late as expected, on a clock that differs by 1 %. */
    @Test
    void whatIsExpectedMayBeMuch() {
        double[] x = returned(0.5, 0.01, 1);
        List<LateMoment> moments = moments(List.of(1), t -> 0.5 + 0.01 * t, x);
        assertEquals(5, moments.size());
        for (LateMoment m : moments) {
            assertEquals(0.5 + 0.01 * m.programmeSeconds(), m.lateSeconds(), 1e-7);
        }
    }

    /** On average over the channels that are heard; an inverted one is half a period off. */
    @Test
    void channelsAreHeardTogether() {
        double[] left = returned(0.0301, 0, 1);
        double[] right = returned(0.0303, 0, 0.5);
        double[] inverted = returned(0.0303, 0, -0.5);
        assertLate(0.0302, moments(List.of(1, 1), t -> 0.03, left, right));
        assertLate(0.0302, moments(List.of(1, -1), t -> 0.03, left, inverted));
        assertLate(0.0302, moments(List.of(-1, 1), t -> 0.03, inverted, left));
        assertLate(0.0301, moments(List.of(1, 0), t -> 0.03, left, right));
        assertLate(0.0303, moments(List.of(0, 1), t -> 0.03, left, right));
        assertEquals(List.of(), moments(List.of(0, 0), t -> 0.03, left, right));
        assertEquals(List.of(), moments(List.of(1, 1), t -> 0.03, left, inverted), "of two minds");
    }

    private static void assertLate(double seconds, List<LateMoment> moments) {
        assertEquals(5, moments.size());
        for (LateMoment m : moments) {
            assertEquals(seconds, m.lateSeconds(), 1e-7);
        }
    }

    /** A quarter of a period of 2.5 ms is 0.625 ms; further off it could be another period. */
    @ParameterizedTest
    @CsvSource({"0.00061, 5", "0.00064, 0", "-0.00061, 5", "-0.00064, 0"})
    void aPeriodInDoubtTellsNothing(double unexpected, int moments) {
        double[] x = returned(0.03 + unexpected, 0, 1);
        List<LateMoment> told = moments(List.of(1), t -> 0.03, x);
        assertEquals(moments, told.size());
        for (LateMoment m : told) {
            assertEquals(0.03 + unexpected, m.lateSeconds(), 1e-7);
        }
    }

    private static int moments(ChannelSet channels, double hz, double seconds) {
        Cue.Tone tone =
                new Cue.Tone(
                        "tone",
                        channels,
                        Returns.RATE / 2,
                        Math.round(seconds * Returns.RATE),
                        hz,
                        0);
        double[] x = Returns.sound(5, t -> 0.1 * Math.sin(2 * Math.PI * hz * t));
        return ToneLateness.of(Returns.of(List.of(tone), x, List.of(1), x), tone, t -> 0).size();
    }

    /** Three seconds clear of 0.1 s at both ends, up to 4 kHz, on both channels. */
    @ParameterizedTest
    @CsvSource({
        "BOTH, 500, 3.21, 3",
        "BOTH, 500, 3.19, 0",
        "LEFT, 500, 3.3, 0",
        "RIGHT, 500, 3.3, 0",
        "BOTH, 3800, 3.3, 3"
    })
    void notEveryToneTells(ChannelSet channels, double hz, double seconds, int moments) {
        assertEquals(moments, moments(channels, hz, seconds));
    }
}
