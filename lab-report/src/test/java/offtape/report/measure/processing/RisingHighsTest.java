package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sweep at 0 dB held against one at −20 dB, by formulas, in steps of 500 Hz. */
class RisingHighsTest {

    /** A loud sweep that brings back so much more than a quiet one at a frequency. */
    private static Response loud(
            double topHz, DoubleUnaryOperator moreDb, DoubleUnaryOperator uncertaintyDb) {
        double[] hz = DoubleStream.iterate(500, f -> f <= topHz, f -> f + 500).toArray();
        double[] more = Arrays.stream(hz).map(moreDb).toArray();
        double[] doubt = Arrays.stream(hz).map(uncertaintyDb).toArray();
        Quantity no = Quantity.unknown("Not asked for.");
        LevelDependence change = new LevelDependence(-20, hz, more, doubt, no, no);
        return new Response(
                "right", 0, hz, more, doubt, no, no, no, 0, 0, List.of(), List.of(), change,
                List.of());
    }

    private static boolean told(DoubleUnaryOperator moreDb, Distortion... ladders) {
        return RisingHighs.in(loud(20_000, moreDb, hz -> 0), List.of(ladders)).isPresent();
    }

    /** 3 dB more between two frequencies. */
    private static DoubleUnaryOperator more(double fromHz, double toHz) {
        return hz -> hz >= fromHz && hz <= toHz ? 3 : 0;
    }

    /** Over more than an octave, within 1.5 to 16 kHz. */
    @ParameterizedTest
    @CsvSource({
        "4000, 8500, true",
        "4000, 8000, false",
        "1500, 3500, true",
        "1500, 3000, false",
        "1000, 3000, false",
        "500, 20000, true",
        "7500, 20000, true",
        "8000, 20000, false",
        "7500, 16000, true",
        "7500, 15500, true",
    })
    void highsThatRiseOverAnOctaveAreTold(double fromHz, double toHz, boolean told) {
        assertEquals(told, told(more(fromHz, toHz)));
    }

    /** The sweep may end before 16 kHz. */
    @ParameterizedTest
    @CsvSource({"9000, true", "8000, false"})
    void itMayLastToTheEndOfTheSweep(double topHz, boolean told) {
        Response loud = loud(topHz, more(4000, 20_000), hz -> 0);
        assertEquals(told, RisingHighs.in(loud, List.of()).isPresent());
    }

    /** A dropout of the quiet sweep in between parts it into two of less than an octave. */
    @Test
    void aGapPartsIt() {
        assertTrue(told(more(4000, 12_000)));
        assertTrue(!told(hz -> hz == 7500 ? 0 : more(4000, 12_000).applyAsDouble(hz)));
        assertTrue(told(hz -> hz == 7000 ? 0 : more(4000, 16_000).applyAsDouble(hz)));
    }

    /** The first stretch that is wide enough is told, with the most that all of it brings back. */
    @Test
    void itIsSaidWhereAndByHowMuch() {
        DoubleUnaryOperator most =
                hz -> hz == 2000 ? 9 : hz < 5000 || hz > 12_000 ? 0 : hz == 11_500 ? 4.25 : 3;
        HealthNote note = RisingHighs.in(loud(20_000, most, hz -> 0), List.of()).orElseThrow();
        assertEquals("warning noise-reduction", note.severity() + " " + note.code());
        assertTrue(
                note.message()
                        .startsWith(
                                "Quiet highs are held down on the right channel: the sweep at +0"
                                        + " dB brings back 4.3 dB more of 11500 Hz than the one at"
                                        + " -20 dB"),
                note.message());
    }

    /**
     * Without a ladder the middle may lose 1.5 dB, so 2.3 dB are asked for; twice the expanded
     * uncertainty comes on top.
     */
    @ParameterizedTest
    @CsvSource({"2.4, 0, true", "2.2, 0, false", "3.4, 0.5, true", "3.2, 0.5, false"})
    void uncertainHighsAreGivenTheBenefitOfDoubt(double moreDb, double doubtDb, boolean told) {
        Response loud = loud(20_000, hz -> hz >= 4000 ? moreDb : 0, hz -> doubtDb);
        assertEquals(told, RisingHighs.in(loud, List.of()).isPresent());
    }

    /** It ends where it falls under what is asked for, with the uncertainty there. */
    @ParameterizedTest
    @CsvSource({"0.3, true", "0.4, false"})
    void doubtEndsIt(double doubtDb, boolean told) {
        // from 8500 Hz on 3 less 2 · 0.4 are less than 2.3, which leaves an octave at most
        Response loud = loud(20_000, more(4000, 9500), hz -> hz < 8500 ? 0 : doubtDb);
        assertEquals(told, RisingHighs.in(loud, List.of()).isPresent());
    }

    /** What was wide enough before doubt begins is told: 4 to 8.5 kHz. */
    @Test
    void whatIsClearBeforeDoubtBeginsIsTold() {
        Response loud = loud(20_000, more(4000, 20_000), hz -> hz < 9000 ? 0 : 0.4);
        assertTrue(RisingHighs.in(loud, List.of()).isPresent());
    }

    private static Distortion ladder(double hz, String channel, double quietDb, double loudDb) {
        return new Ladders()
                .quiet(-20, quietDb, 0.0, 0.0)
                .quiet(0, loudDb, 0.0, 0.0)
                .at(hz, channel);
    }

    /** The ladder of 1 kHz of the same channel tells what the middle loses; 0.8 dB on top. */
    @ParameterizedTest
    @CsvSource({
        "1000, right, 0, 0, 0.9, true",
        "1000, right, 0, 0, 0.7, false",
        "1000, right, 0.5, -1.5, 2.9, true",
        "1000, right, 0.5, -1.5, 2.7, false",
        // a middle that gains with level takes nothing off
        "1000, right, 0, 2, 0.9, true",
        "1000, right, 0, 2, 0.7, false",
        // other ladders tell nothing of it: 1.5 dB then
        "1000, left, 0, 0, 2.2, false",
        "1500, right, 0, 0, 2.2, false",
        "1499, right, 0, 0, 2.2, true",
        "1000, left, 0, -9, 2.4, true",
    })
    void theMiddlesOwnLossIsTakenOff(
            double hz, String channel, double quietDb, double loudDb, double moreDb, boolean told) {
        assertEquals(told, told(f -> f >= 4000 ? moreDb : 0, ladder(hz, channel, quietDb, loudDb)));
    }

    /** A ladder without one of the two levels is passed over for the next one. */
    @Test
    void aLadderMustHaveBothLevels() {
        Distortion other = ladder(1000, "right", 0, 0);
        Distortion noLoud = new Ladders().quiet(-20, 0, 0.0, 0.0).at(1000, "right");
        Distortion noQuiet = new Ladders().quiet(0, 0, 0.0, 0.0).at(1000, "right");
        DoubleUnaryOperator more = hz -> hz >= 4000 ? 2 : 0;
        assertTrue(!told(more, noLoud) && !told(more, noQuiet));
        assertTrue(told(more, noLoud, noQuiet, other));
    }

    @Test
    void theQuietestSweepTellsNothing() {
        Response quiet = loud(20_000, more(4000, 16_000), hz -> 0).withLevelDependence(null);
        assertTrue(RisingHighs.in(quiet, List.of()).isEmpty());
    }
}
