package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is a limit, where it counts, and how it is said. */
class LimitTest {

    private static Limit limit(
            String quantity,
            Double least,
            Double most,
            Double fromHz,
            Double toHz,
            Double lowDb,
            Double highDb,
            Double widthDb) {
        return new Limit(quantity, least, most, fromHz, toHz, lowDb, highDb, widthDb, null, null);
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            delimiter = '|',
            value = {
                "balance|-1|1|-|-|-|-|-|± 1 dB",
                "balance|-2|1|-|-|-|-|-|−2 to 1 dB",
                "balance|1|2.5|-|-|-|-|-|1 to 2.5 dB",
                "balance|-|0.25|-|-|-|-|-|at most 0.25 dB",
                "interchannel-delay|-20|-|-|-|-|-|-|at least −20 µs",
                "response|-|-|40|12500|-|-|7|40 Hz to 12500 Hz within a width of 7 dB",
                "response|-|-|40|12500|-|2|-|40 Hz to 12500 Hz at most 2 dB re 1 kHz",
                "response|-|-|40|12500|-3|-|-|40 Hz to 12500 Hz at least −3 dB re 1 kHz",
                "response|-|-|40|12500|-3|3|-|40 Hz to 12500 Hz ± 3 dB re 1 kHz",
                "response|-|-|40|12500|-5|3|-|40 Hz to 12500 Hz −5 to 3 dB re 1 kHz",
                "response|-|-|40|12500|1|3|-|40 Hz to 12500 Hz 1 to 3 dB re 1 kHz"
            })
    void isSaidInWords(
            String quantity,
            Double least,
            Double most,
            Double fromHz,
            Double toHz,
            Double lowDb,
            Double highDb,
            Double widthDb,
            String words) {
        assertEquals(
                words, limit(quantity, least, most, fromHz, toHz, lowDb, highDb, widthDb).words());
    }

    /** What nothing could meet, and what would be passed over in silence. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            delimiter = '|',
            value = {
                "-|-|1|-|-|-|-|-|\"null\" is no quantity of limits.",
                "hum|-|1|-|-|-|-|-|\"hum\" is no quantity of limits.",
                "balance|-|-|-|-|-|-|-|A limit of balance has least, most, or both",
                "balance|2|1|-|-|-|-|-|A limit of balance has least, most, or both",
                "balance|1|1|-|-|-|-|-|with least below most",
                "balance|-|1|40|-|-|-|-|a band and levels are of the response only",
                "balance|-|1|-|40|-|-|-|a band and levels are of the response only",
                "balance|-|1|-|-|-1|-|-|a band and levels are of the response only",
                "balance|-|1|-|-|-|1|-|a band and levels are of the response only",
                "balance|-|1|-|-|-|-|1|a band and levels are of the response only",
                "response|-|-|-|12500|-3|3|-|A limit of the response has fromHz above 0",
                "response|-|-|40|-|-3|3|-|A limit of the response has fromHz above 0",
                "response|-|-|0|12500|-3|3|-|A limit of the response has fromHz above 0",
                "response|-|-|-40|12500|-3|3|-|A limit of the response has fromHz above 0",
                "response|-|-|40|40|-3|3|-|toHz above that",
                "response|-|-|40|30|-3|3|-|toHz above that",
                "response|-|-|40|12500|-|-|-|either levels (lowDb, highDb or both",
                "response|-|-|40|12500|3|3|-|with lowDb below highDb",
                "response|-|-|40|12500|3|-3|-|with lowDb below highDb",
                "response|-|-|40|12500|-|-|0|or a widthDb above 0",
                "response|-|-|40|12500|-|-|-7|or a widthDb above 0",
                "response|-|-|40|12500|-3|-|7|either levels",
                "response|-|-|40|12500|-|3|7|either levels",
                "response|-3|-|40|12500|-3|3|-|but neither least nor most",
                "response|-|3|40|12500|-3|3|-|but neither least nor most"
            })
    void whatIsNoneIsRefused(
            String quantity,
            Double least,
            Double most,
            Double fromHz,
            Double toHz,
            Double lowDb,
            Double highDb,
            Double widthDb,
            String words) {
        UnusableInputException e =
                assertThrows(
                        UnusableInputException.class,
                        () -> limit(quantity, least, most, fromHz, toHz, lowDb, highDb, widthDb));
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }

    /** 1 % of 100 mm/s is 1 mm/s. */
    @ParameterizedTest
    @CsvSource({
        "100, true",
        "101, true",
        "99, true",
        "101.01, false",
        "98.99, false",
        "200, false"
    })
    void countsAtItsTapeSpeed(double mmPerS, boolean counts) {
        assertEquals(counts, Limits.at(100, "balance", 1, null).countsAt(mmPerS));
    }

    @Test
    void countsAtAnyTapeSpeedIfItNamesNone() {
        assertTrue(Limits.of("balance", null, 1.0).countsAt(190.5));
        assertTrue(Limits.of("balance", null, 1.0).countsAt(null));
        assertFalse(Limits.at(190.5, "balance", 1, null).countsAt(null));
    }
}
