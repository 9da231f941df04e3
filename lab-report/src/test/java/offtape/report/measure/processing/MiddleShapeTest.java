package offtape.report.measure.processing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.HealthNote;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Responses whose value at each twelfth of an octave is given, from 62.5 Hz up. */
class MiddleShapeTest {

    private static final OptionalDouble SLOW = OptionalDouble.of(190.5);

    private static final LevelDependence CHANGE =
            new LevelDependence(
                    -20,
                    new double[0],
                    new double[0],
                    new double[0],
                    Quantity.unknown("Not asked for."),
                    Quantity.unknown("Not asked for."));

    private static Response sweep(
            String channel, LevelDependence change, double[] hz, DoubleUnaryOperator db) {
        Quantity no = Quantity.unknown("Not asked for.");
        double[] magnitude = Arrays.stream(hz).map(db).toArray();
        double[] none = new double[hz.length];
        return new Response(
                channel, -20, hz, magnitude, none, no, no, no, 0, 0, List.of(), List.of(), change,
                List.of());
    }

    /** Frequencies from 62.5 Hz up to some octaves above, twelve an octave. */
    private static double[] grid(int octaves) {
        return IntStream.rangeClosed(0, 12 * octaves)
                .mapToDouble(k -> 62.5 * Math.pow(2, k / 12.0))
                .toArray();
    }

    private static Response quiet(DoubleUnaryOperator db) {
        return sweep("left", null, grid(8), db);
    }

    private static Response loud(DoubleUnaryOperator db) {
        return sweep("left", CHANGE, grid(8), db);
    }

    private static Optional<HealthNote> found(OptionalDouble mmPerS, Response... all) {
        return MiddleShape.in(all[0], List.of(all), mmPerS);
    }

    private static boolean told(DoubleUnaryOperator db) {
        return found(SLOW, quiet(db), loud(db)).isPresent();
    }

    /** So much at one frequency, that is at the point next to it, and none elsewhere. */
    private static DoubleUnaryOperator at(double wantedHz, double db) {
        return hz -> Math.abs(Math.log(hz / wantedHz)) < 0.02 ? db : 0;
    }

    private static DoubleUnaryOperator sum(DoubleUnaryOperator... all) {
        return hz -> Arrays.stream(all).mapToDouble(f -> f.applyAsDouble(hz)).sum();
    }

    @ParameterizedTest
    @CsvSource({
        "1000, 2.1, true",
        "1000, 1.9, false",
        "1000, -2.1, true",
        "1000, -1.9, false",
        // 400 Hz to 4 kHz, so the point at 4 kHz counts and the next one does not
        "4000, 5, true",
        "4238, 5, false",
        "420, 5, true",
        "397, 5, false",
        "250, 5, false",
    })
    void aBellOfTwoDecibelsIsNoted(double hz, double db, boolean told) {
        assertEquals(told, told(at(hz, db)));
    }

    @Test
    void itIsSaidWhereAndByHowMuch() {
        DoubleUnaryOperator peak = sum(at(2000, 3.25), at(500, 2.5));
        HealthNote note = found(SLOW, quiet(peak), loud(peak)).orElseThrow();
        assertEquals("note middle-not-of-tape", note.severity() + " " + note.code());
        assertTrue(
                note.message()
                        .startsWith(
                                "The response of the left channel has a peak of 3.3 dB"
                                        + " about 2000 Hz"),
                note.message());
        DoubleUnaryOperator dip = at(1000, -4);
        String words = found(SLOW, quiet(dip), loud(dip)).orElseThrow().message();
        assertTrue(words.contains("has a dip of 4.0 dB about 1000 Hz"), words);
    }

    /**
     * 1 kHz stands out of both octaves, by 1.5 dB of each and 2 dB of their mean; these are level
     * within 2 dB, and so is the one above.
     */
    @ParameterizedTest
    @CsvSource({
        "3, 1.4, 0, 0, true",
        "3, 1.6, 0, 0, false",
        "3, 0, 1.4, 1.4, true",
        "3, 0, 1.6, 1.6, false",
        "-3, -1.4, 0, 0, true",
        "-3, -1.6, 0, 0, false",
        "-3, 0, -1.4, -1.4, true",
        "-3, 0, -1.6, -1.6, false",
        "3, 1, 0.9, 0.9, true",
        "3, 1.1, 1, 1, false",
        "5, 1.9, 0, 0, true",
        "5, 2.1, 0, 0, false",
        "5, 0, 1.9, 1.9, true",
        "5, 0, 2.1, 2.1, false",
        "5, 0, 0, 1.9, true",
        "5, 0, 0, 2.1, false",
        "5, 0, 0, -1.9, true",
        "5, 0, 0, -2.1, false",
        "5, 0, 1, -1.1, false",
    })
    void theOctavesBesideItAreLevel(
            double db, double belowDb, double aboveDb, double farDb, boolean told) {
        DoubleUnaryOperator course =
                sum(at(1000, db), at(500, belowDb), at(2000, aboveDb), hz -> hz > 3900 ? farDb : 0);
        assertEquals(told, told(course));
    }

    /** What counts is the difference, whatever level the middle lies at against 1 kHz. */
    @ParameterizedTest
    @CsvSource({"-4, 2.1, true", "-4, 1.9, false", "4, -2.1, true", "4, -1.9, false", "9, 3, true"})
    void aBellStandsOutOfItsOwnLevel(double levelDb, double db, boolean told) {
        assertEquals(told, told(sum(hz -> levelDb, at(2000, db))));
    }

    /** Contours of 1 mm reach to 190.5 Hz · 1.5 at 19.05 cm/s, so to 571.5 Hz at 38.1 cm/s. */
    @ParameterizedTest
    @CsvSource({
        "190.5, 420, true",
        "381, 561, false",
        "381, 595, true",
        ", 561, false",
        ", 595, true"
    })
    void contoursOfTheHeadAreLeftAlone(Double mmPerS, double hz, boolean told) {
        OptionalDouble speed = mmPerS == null ? OptionalDouble.empty() : OptionalDouble.of(mmPerS);
        DoubleUnaryOperator bell = at(hz, 5);
        assertEquals(told, found(speed, quiet(bell), loud(bell)).isPresent());
    }

    /** Every louder sweep of the channel must show it within 1 dB. */
    @ParameterizedTest
    @CsvSource({"4.1, true", "3.9, false", "5.9, true", "6.1, false", "0, false"})
    void allSweepsShowIt(double otherDb, boolean told) {
        Response quiet = quiet(at(1000, 5));
        assertEquals(told, found(SLOW, quiet, loud(at(1000, otherDb))).isPresent());
        assertEquals(
                told, found(SLOW, quiet, loud(at(1000, 5)), loud(at(1000, otherDb))).isPresent());
    }

    @Test
    void oneSweepAloneOrOneOfTheOtherChannelTellsNothing() {
        DoubleUnaryOperator bell = at(1000, 5);
        Response empty = sweep("left", CHANGE, new double[0], bell);
        Response right = sweep("right", CHANGE, grid(8), hz -> 0);
        assertTrue(found(SLOW, quiet(bell)).isEmpty());
        assertTrue(found(SLOW, quiet(bell), right, empty).isEmpty());
        assertTrue(found(SLOW, quiet(bell), right, empty, loud(bell)).isPresent());
        assertTrue(found(SLOW, loud(bell), loud(bell)).isEmpty());
        assertTrue(found(SLOW, sweep("left", null, new double[0], bell), loud(bell)).isEmpty());
    }

    /** An octave below and two above must have been swept, by all sweeps. */
    @Test
    void theSweepMustReachFarEnough() {
        DoubleUnaryOperator bell = at(1000, 5);
        Response short4k = sweep("left", CHANGE, grid(6), bell);
        assertTrue(found(SLOW, quiet(bell), short4k).isPresent());
        double[] below4k = Arrays.copyOf(grid(6), grid(6).length - 1);
        assertFalse(found(SLOW, quiet(bell), sweep("left", CHANGE, below4k, bell)).isPresent());
        double[] from500 = Arrays.copyOfRange(grid(8), 36, 97);
        assertEquals(500, from500[0]);
        assertTrue(found(SLOW, sweep("left", null, from500, bell), loud(bell)).isPresent());
        double[] from530 = Arrays.copyOfRange(grid(8), 37, 97);
        assertTrue(found(SLOW, sweep("left", null, from530, bell), loud(bell)).isEmpty());
    }

    /**
     * Between points a response is straight over the logarithm: 1 kHz lies a quarter of the way
     * from 840.9 Hz to 1681.8 Hz, and three quarters of the one and a quarter of the other are its
     * level.
     */
    @ParameterizedTest
    @CsvSource({"4.1, true", "3.9, false", "5.9, true", "6.1, false"})
    void sweepsOfOtherFrequenciesAreReadInBetween(double otherDb, boolean told) {
        double[] hz = {62.5, 500, 840.8964, 1681.7928, 2000, 20_000};
        Response loud =
                sweep(
                        "left",
                        CHANGE,
                        hz,
                        f -> f < 800 || f > 1900 ? 0 : f < 1000 ? otherDb - 1 : otherDb + 3);
        assertEquals(told, found(SLOW, quiet(at(1000, 5)), loud).isPresent());
    }
}
