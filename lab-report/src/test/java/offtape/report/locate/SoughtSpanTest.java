package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A stretch of a programme that is one sine on the left and half of another on the right. */
class SoughtSpanTest {

    private static final int RATE = 8000;

    private static double left(double seconds) {
        return Math.sin(2 * Math.PI * 500 * seconds);
    }

    private static double right(double seconds) {
        return 0.5 * Math.cos(2 * Math.PI * 1200 * seconds);
    }

    private static double[] sound(DoubleUnaryOperator at) {
        double[] x = new double[RATE / 2];
        Arrays.setAll(x, i -> at.applyAsDouble((double) i / RATE));
        return x;
    }

    private static SoughtSpan span(double from, double seconds) {
        double[] left = sound(SoughtSpanTest::left);
        double[] right = sound(SoughtSpanTest::right);
        return SoughtSpan.of(new MemoryAudio("p", RATE, left, right), from, seconds);
    }

    /**
     * As the recording holds it: moment t of it from the middle on is t over the stretch in the
     * programme, both channels added, from the first of its samples to the last, of which 50 ms
     * hold 400 at the programme's rate. All is known between samples to −100 dB.
     */
    @ParameterizedTest
    @CsvSource({
        "0.2, 1, 8000, 401",
        "0.2, 1.25, 8000, 501",
        "0.20003, 0.8, 8000, 321",
        "0.2, 1, 12000, 601",
        "0.2, 0.9999, 8000, 399"
    })
    void theTemplateIsTheStretchAsItReturns(
            double from, double stretch, double recordingHz, int length) {
        SoughtSpan span = span(from, 0.05);
        double[] template = span.template(span.exact(), stretch, recordingHz);
        assertEquals(length, template.length);
        for (int i = 0; i < length; i++) {
            double moment = from + 0.025 + (i - length / 2) / (recordingHz * stretch);
            assertEquals(left(moment) + right(moment), template[i], 3e-5, "sample " + i);
        }
    }

    /** Before the programme's start there is nothing. */
    @Test
    void whatTheProgrammeDoesNotHoldIsSilence() {
        SoughtSpan span = span(-0.05, 0.1);
        double[] template = span.template(span.exact(), 1, RATE);
        assertEquals(801, template.length);
        assertEquals(0, template[100], 1e-12);
        assertEquals(left(0.03) + right(0.03), template[640], 3e-5);
    }
}
