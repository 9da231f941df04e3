package offtape.core.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.reference.Source;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TapeSpeedTest {

    /** 1 in = 25.4 mm: 7½ in/s = 190.5 mm/s, and each speed is half or twice the next. */
    @ParameterizedTest
    @CsvSource({
        "30ips, 762, 76.2 cm/s, false",
        "15 ips, 381, 38.1 cm/s, false",
        "7.5IPS, 190.5, 19.05 cm/s, false",
        "3.75in/s, 95.25, 9.53 cm/s, true",
        "1.875ips, 47.625, 4.76 cm/s, true",
        "0.9375ips, 23.8125, 2.38 cm/s, true",
    })
    @Source("IEC 60094-1, tape speeds (from memory); 1 in = 25.4 mm exactly")
    void standardSpeeds(String text, double mmPerS, String written, boolean slow) {
        TapeSpeed speed = TapeSpeed.parse(text);
        assertEquals(mmPerS, speed.mmPerS(), 1e-9);
        assertEquals(written, speed.toString());
        assertEquals(slow, speed.isSlow());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "19.05cm/s|190.5", "19 cm/s|190.5", "19,05 cm/s|190.5", "190.5mm/s|190.5",
                "9.5cm/s|95.25", "9.53 cm/s|95.25", "4.8cm/s|47.625", "4.75cm/s|47.625",
                "38cm/s|381", "76 cm/s|762", "  7.5  ips |190.5", "19.05 CM/S|190.5",
                "2.4 cm/s|23.8125",
            })
    @Source("common practice, no source: short forms of the speeds")
    void shortFormsMeanTheStandardSpeed(String text, double mmPerS) {
        assertEquals(mmPerS, TapeSpeed.parse(text).mmPerS(), 1e-9);
    }

    @Test
    void otherSpeedsStayAsTheyAre() {
        assertEquals(120, TapeSpeed.parse("12 cm/s").mmPerS(), 1e-12);
        assertEquals("12 cm/s", TapeSpeed.parse("12 cm/s").toString());
        assertEquals("50 cm/s", new TapeSpeed(500).toString());
        assertEquals("100 cm/s", new TapeSpeed(1000).toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "19",
                "fast",
                "-19cm/s",
                "1e2cm/s",
                "19..5cm/s",
                "NaN ips",
                "7½ips",
                "ips"
            })
    void refusesWhatIsNoSpeed(String text) {
        Exception e = assertThrows(IllegalArgumentException.class, () -> TapeSpeed.parse(text));
        assertEquals(
                "\"" + text + "\" is not a tape speed; write 19.05cm/s or 7.5ips, for instance.",
                e.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"0ips", "0.1cm/s", "1000ips", "19050cm/s"})
    void refusesSpeedsNoMachineHas(String text) {
        Exception e = assertThrows(IllegalArgumentException.class, () -> TapeSpeed.parse(text));
        assertEquals(
                "\"" + text + "\" is no speed a tape machine runs at; 4.76cm/s to 76.2cm/s is.",
                e.getMessage());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -190.5, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesImpossibleSpeeds(double mmPerS) {
        assertThrows(IllegalArgumentException.class, () -> new TapeSpeed(mmPerS));
    }

    /** From 5 mm/s to 2 m/s, both of them; 100 mm/s is no longer slow. */
    @Test
    void boundsAreAmongTheSpeeds() {
        assertEquals(5, TapeSpeed.parse("5mm/s").mmPerS(), 1e-12);
        assertEquals(2000, TapeSpeed.parse("200cm/s").mmPerS(), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> TapeSpeed.parse("4.99mm/s"));
        assertThrows(IllegalArgumentException.class, () -> TapeSpeed.parse("2000.1mm/s"));
        assertFalse(new TapeSpeed(100).isSlow());
        assertTrue(new TapeSpeed(99.9).isSlow());
    }
}
