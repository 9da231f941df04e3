package offtape.core.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the mark is, from its description. */
class AlignmentMarkTest {

    /**
     * From 500 Hz up to 8 kHz and down again, the period changing evenly: half-way it is the mean
     * of 2 ms and 0.125 ms, 1.0625 ms or 941.176 Hz; a quarter of the way 1.53125 ms or 653.061 Hz.
     * The phase grows in both glides.
     */
    @ParameterizedTest
    @CsvSource({
        "-0.2499, 500",
        "-0.1875, 653.061",
        "-0.125, 941.176",
        "-0.0001, 8000",
        "0.0001, 8000",
        "0.125, 941.176",
        "0.1875, 653.061",
        "0.2499, 500"
    })
    void periodChangesEvenly(double seconds, double hz) {
        AlignmentMark mark = new AlignmentMark(48_000);
        double h = 1e-6;
        double turns = (mark.phase(seconds + h) - mark.phase(seconds - h)) / (2 * Math.PI);
        assertEquals(hz, turns / (2 * h), 0.007 * hz);
    }

    /**
     * Power that falls as 1/f² from L to H has the mean f of L·H/(H − L)·ln(H/L) and the mean f² of
     * L·H. 500 Hz to 8 kHz: 1478.714 Hz, √(4·10⁶ − 1478.714²) = 1346.63 Hz. To 1600 Hz, where the
     * sample rate is 4 kHz: 845.926 Hz, √(8·10⁵ − 845.926²) = 290.49 Hz.
     */
    @ParameterizedTest
    @CsvSource({"48000, 1346.63", "20000, 1346.63", "4000, 290.49"})
    void widthIsThatOfItsSpectrum(int rate, double hz) {
        assertEquals(hz, new AlignmentMark(rate).widthHz(), 0.05);
    }

    /** Raised cosines of 20 ms at the ends and of 4 ms to either side of the middle. */
    @ParameterizedTest
    @CsvSource({
        "-0.26, 0", "-0.25, 0", "-0.24, 0.5", "-0.23, 1", "-0.1, 1", "-0.004, 1", "-0.002, 0.5",
        "0, 0", "0.001, 0.146447", "0.002, 0.5", "0.1, 1", "0.24, 0.5", "0.25, 0", "0.3, 0"
    })
    void endsAreSoft(double seconds, double envelope) {
        assertEquals(envelope, new AlignmentMark(48_000).envelope(seconds), 1e-6);
    }
}
