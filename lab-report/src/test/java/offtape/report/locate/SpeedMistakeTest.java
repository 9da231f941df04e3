package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A synchronous motor turns with the mains: 50 Hz for 60 Hz makes 5/6 of the speed. */
class SpeedMistakeTest {

    @ParameterizedTest
    @ValueSource(doubles = {1, 0.971, 1.029})
    void usualErrorsAreNoMistake(double ratio) {
        assertNull(SpeedMistake.of(ratio, 190.5).code());
    }

    @ParameterizedTest
    @CsvSource({
        "0.8333, mains-frequency, 60 Hz mains does on 50 Hz",
        "0.826, mains-frequency, 60 Hz mains does on 50 Hz",
        "1.2, mains-frequency, 50 Hz mains does on 60 Hz",
        "1.21, mains-frequency, at 121.0 % of its nominal speed",
        "0.8, far-off-speed, at 80.0 % of its nominal speed",
        "0.92, far-off-speed, a file of 44.1 kHz that is taken for one of 48 kHz",
        "1.0884, far-off-speed, a file of 44.1 kHz that is taken for one of 48 kHz",
        "1.06, far-off-speed, further off than wear explains",
        "1.45, far-off-speed, at 145.0 % of its nominal speed",
        "2.001, wrong-speed, was made for 19.05 cm/s and ran at 38.1 cm/s",
        "0.4995, wrong-speed, was made for 19.05 cm/s and ran at 9.53 cm/s",
        "1.6667, wrong-speed, ran at 38.1 cm/s (and -16.7 % off that)",
        "0.6, wrong-speed, ran at 9.53 cm/s (and +20.0 % off that)",
    })
    void mistakesAreNamed(double ratio, String code, String words) {
        SpeedMistake mistake = SpeedMistake.of(ratio, 190.5);
        assertEquals(code, mistake.code());
        assertTrue(mistake.sentence().contains(words), mistake.sentence());
        assertEquals(code.equals("wrong-speed"), mistake.isWrongSpeed());
    }

    /** A quarter off twice or half the speed is still that speed, and more is another fault. */
    @ParameterizedTest
    @CsvSource({
        "2.5, wrong-speed", "1.5, wrong-speed", "0.625, wrong-speed", "0.375, wrong-speed",
        "2.51, far-off-speed", "1.49, far-off-speed", "0.63, far-off-speed", "0.37, far-off-speed"
    })
    void aboutTwiceAndAboutHalfAreOtherSpeeds(double ratio, String code) {
        assertEquals(code, SpeedMistake.of(ratio, 190.5).code());
    }

    /** A hundredth off a factor of two is the machine's own error and is not told. */
    @ParameterizedTest
    @CsvSource({
        "2, 'The tape ran at twice the speed it was made for, or'",
        "2.019, 'The tape ran at twice the speed it was made for, or'",
        "2.1, 'The tape ran at twice the speed it was made for (and +5.0 % off that), or'",
        "0.5, 'The tape ran at half the speed it was made for, or'",
        "0.496, 'The tape ran at half the speed it was made for, or'",
        "0.475, 'The tape ran at half the speed it was made for (and -5.0 % off that), or'",
    })
    void aProgrammeWithoutASpeedIsNamedByItsFactor(double ratio, String words) {
        String sentence = SpeedMistake.of(ratio, null).sentence();
        assertTrue(sentence.startsWith(words), sentence);
    }
}
