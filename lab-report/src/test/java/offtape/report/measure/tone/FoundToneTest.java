package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FoundToneTest {

    /** Three seconds of 1000 Hz and one of 1040 Hz are 1010 Hz on average. */
    @Test
    void twoPartsOfATone() {
        FoundTone first = new FoundTone(2, 5, 1000, 2000, -10, 1);
        FoundTone later = new FoundTone(5.4, 6.4, 1040, 1, -120, 2);
        assertEquals(3, first.seconds(), 1e-12);
        FoundTone both = first.until(later);
        assertEquals(1010, both.frequencyHz(), 1e-9);
        assertEquals(new FoundTone(2, 6.4, both.frequencyHz(), 2000, -10, 2), both);
    }

    /** Within 6 % either way: 1000/1.06 = 943.4. */
    @ParameterizedTest
    @CsvSource({
        "1000, true",
        "1059.9, true",
        "1060.1, false",
        "943.5, true",
        "943.3, false",
        "500, false"
    })
    void frequenciesAreNearByTheirRatio(double hz, boolean near) {
        assertEquals(near, new FoundTone(0, 1, 1000, 1, -120, 0).isNear(hz, 0.06));
    }
}
