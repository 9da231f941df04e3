package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import offtape.report.result.HealthNote;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is allowed: 0.3 µs or dB and four standard deviations of what noise and wander make. */
class PairCheckTest {

    private static PairReading at(double seconds, double lateUs, double db, double share) {
        return new PairReading(seconds, 1000, -20, lateUs, db, share);
    }

    private static List<String> codes(double wanderUs, PairReading... readings) {
        return new PairCheck(List.of(readings), wanderUs)
                .notes().stream().map(HealthNote::code).toList();
    }

    /** A wander of 0.5 µs rms moves the difference of two readings by √2 of it: 0.3 + 4·0.7071. */
    @ParameterizedTest
    @CsvSource({"3.12, false", "3.14, true", "-3.12, false", "-3.14, true"})
    void wanderIsAllowedFor(double change, boolean told) {
        List<String> codes = codes(0.5, at(1, 5, 0, 0), at(2, 5 + change, 0, 0));
        assertEquals(told ? List.of("channels-shift") : List.of(), codes);
    }

    /** Shares of 3e-3 and 4e-3 are 0.4775 and 0.6366 µs at 1 kHz: 0.3 + 4·0.7958 = 3.483 µs. */
    @ParameterizedTest
    @CsvSource({"3.47, false", "3.50, true"})
    void noiseOfBothReadingsIsAllowedFor(double change, boolean told) {
        List<String> codes = codes(0, at(1, 5, 0, 3e-3), at(2, 5 + change, 0, 4e-3));
        assertEquals(told ? List.of("channels-shift") : List.of(), codes);
    }

    /** A share of 5e-3 in all is 8.686·5e-3 = 0.04343 dB: 0.3 + 4·0.04343 = 0.4737 dB. */
    @ParameterizedTest
    @CsvSource({"0.47, false", "0.48, true", "-0.47, false", "-0.48, true"})
    void balanceIsAllowedItsNoise(double change, boolean told) {
        List<String> codes = codes(0, at(1, 5, 1, 3e-3), at(2, 5, 1 + change, 4e-3));
        assertEquals(told ? List.of("balance-changes") : List.of(), codes);
    }

    /** Level may turn the balance of what saturates; delay is held against all levels. */
    @Test
    void balanceIsHeldAgainstTheSameLevelOnly() {
        PairReading quiet = at(1, 5, 0, 0);
        PairReading loud = new PairReading(2, 1000, 0, 15, 3, 0);
        assertEquals(List.of("channels-shift"), codes(0, quiet, loud));
        PairReading near = new PairReading(2, 1000.05, -19.95, 15, 3, 0);
        assertEquals(List.of("channels-shift", "balance-changes"), codes(0, quiet, near));
    }

    /**
     * Of three readings the pair that differs most, with the sign of the later less the earlier.
     */
    @Test
    void theWorstPairIsTold() {
        List<HealthNote> notes =
                new PairCheck(List.of(at(1, 5, 0.5, 0), at(2, 7, 2.0, 0), at(3, 3, -1.0, 0)), 0)
                        .notes();
        assertEquals(2, notes.size());
        assertTrue(
                notes.get(0).message().contains("-4.00 µs between 2.0 s and 3.0 s"),
                notes.get(0).message());
        assertTrue(notes.get(0).message().contains("0.30 µs would be no surprise"));
        assertTrue(
                notes.get(1).message().contains("-3.00 dB between 2.0 s and 3.0 s"),
                notes.get(1).message());
        assertTrue(notes.stream().allMatch(n -> n.severity().equals("warning")));
    }

    /** Of pairs that differ alike the first is told. */
    @Test
    void ofEqualChangesTheFirstIsTold() {
        List<HealthNote> notes =
                new PairCheck(List.of(at(1, 0, 0, 0), at(2, 4, 0, 0), at(3, 0, 0, 0)), 0).notes();
        assertTrue(
                notes.get(0).message().contains("+4.00 µs between 1.0 s and 2.0 s"),
                notes.get(0).message());
    }

    /** What is just allowed is no warning. */
    @Test
    void whatIsAllowedIsNotTold() {
        assertEquals(List.of(), codes(0, at(1, 0, 0, 0), at(2, 0.3, 0.3, 0)));
    }

    @Test
    void aSingleReadingHasNothingBesideIt() {
        assertEquals(List.of(), codes(0));
        assertEquals(List.of(), codes(0, at(1, 5, 0, 0)));
    }
}
