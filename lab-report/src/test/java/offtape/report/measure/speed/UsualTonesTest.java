package offtape.report.measure.speed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import offtape.report.measure.tone.FoundTone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UsualTonesTest {

    @ParameterizedTest
    @ValueSource(doubles = {3150, 3000, 1000, 10_000, 315, 333, 400, 440, 8000})
    void everyUsualToneIsItself(double hz) {
        assertEquals(Optional.of(hz), UsualTones.nearest(hz));
    }

    /** Neighbours part at their geometric mean: √(3000 · 3150) = 3074.09, √(315 · 333) = 323.87. */
    @ParameterizedTest
    @CsvSource({"3074.0, 3000", "3074.2, 3150", "323.8, 315", "323.9, 333"})
    void theNearestIsTaken(double hz, double usual) {
        assertEquals(Optional.of(usual), UsualTones.nearest(hz));
    }

    /** 6 %: 3150 · 1.06 = 3339, 3000 / 1.06 = 2830.2, 10 000 / 1.06 = 9434, 8000 · 1.06 = 8480. */
    @Test
    void sixPercentAwayNoneIsNear() {
        assertEquals(Optional.of(3150.0), UsualTones.nearest(3338));
        assertEquals(Optional.empty(), UsualTones.nearest(3340));
        assertEquals(Optional.of(3000.0), UsualTones.nearest(2831));
        assertEquals(Optional.empty(), UsualTones.nearest(2829));
        assertEquals(Optional.of(8000.0), UsualTones.nearest(8479));
        assertEquals(Optional.empty(), UsualTones.nearest(8481));
        assertEquals(Optional.of(10_000.0), UsualTones.nearest(9435));
        assertEquals(Optional.empty(), UsualTones.nearest(9433));
    }

    @ParameterizedTest
    @CsvSource({
        "2829, false",
        "2831, true",
        "3150, true",
        "3338, true",
        "3340, false",
        "1000, false"
    })
    void bothTonesForWowAndFlutterAreKnown(double hz, boolean isForFlutter) {
        assertEquals(
                isForFlutter,
                UsualTones.isForFlutter(new FoundTone(0, 9, hz, 0, -200, 0)),
                hz + "");
    }

    /**
     * Another tone is doubted up to three times the distance of the one that was taken: for 3150 Hz
     * and 3000 Hz up to 3150 · (3000/3150)^¼ = 3111.8 Hz.
     */
    @Test
    void aToneBetweenTwoIsDoubted() {
        assertEquals(
                Optional.of(
                        "A tone of 3111 Hz was taken for 3150 Hz; if it should have 3000 Hz, say so"
                                + " with --frequency."),
                UsualTones.doubt(3111, 3150));
        assertEquals(Optional.empty(), UsualTones.doubt(3113, 3150));
    }

    /** More than 6 % away, however far the tone lies from the one that was taken. */
    @Test
    void whatIsTooFarAwayIsNotDoubted() {
        assertEquals(Optional.empty(), UsualTones.doubt(3240, 3150));
        assertEquals(Optional.empty(), UsualTones.doubt(2860, 3000));
        assertFalse(UsualTones.doubt(3150, 3150).isPresent());
    }

    /** Within 2.5 % of a usual tone at 5/6, 6/5, twice or half the speed. */
    @ParameterizedTest
    @CsvSource({
        "2625, 'It could be 3150 Hz at 5/6 of the speed'",
        "2690, 'It could be 3150 Hz at 5/6 of the speed'",
        "3780, 'It could be 3150 Hz at 6/5 of the speed'",
        "6300, 'It could be 3150 Hz at twice the speed'",
        "1500, 'It could be 3000 Hz at half the speed'",
        "2000, 'It could be 1000 Hz at twice the speed'"
    })
    void anOddToneMayBeAUsualOneAtAWrongSpeed(double hz, String guess) {
        String said = UsualTones.guess(hz).orElseThrow();
        assertTrue(said.startsWith(guess), said);
    }

    /** 2625 · 1.026 = 2693; 630 is twice 315, 666 twice 333 and 700 neither. */
    @ParameterizedTest
    @ValueSource(doubles = {2694, 700, 1200 * 1.026})
    void otherTonesAreNotGuessed(double hz) {
        assertEquals(Optional.empty(), UsualTones.guess(hz));
    }
}
