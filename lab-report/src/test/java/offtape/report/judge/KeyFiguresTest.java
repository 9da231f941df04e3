package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What must be known of any machine, and which of it a session lacks. */
class KeyFiguresTest {

    private static final Quantity SURE = Measured.db(-50, 1);

    private static List<String> missing(Measured session) {
        return KeyFigures.missing(session.results()).stream().map(Gap::what).toList();
    }

    static Stream<Arguments> sessions() {
        Measured whole = Measured.whole();
        Measured nothing = Measured.nothing();
        return Stream.of(
                lacks(whole, ""),
                lacks(whole.withResponse(), "response (left and right)"),
                lacks(whole.withResponse(Measured.flat("right")), "response (left)"),
                lacks(
                        whole.withResponse(
                                Measured.flat("left"), Measured.curve("right", "1000:0:1")),
                        "response (right)"),
                lacks(
                        whole.withResponse(
                                Measured.flat("left"), Measured.curve("right", "20:0:1 20000:0:1")),
                        ""),
                lacks(whole.withDistortion(), "distortion against level (left and right)"),
                lacks(whole.withNoise(), "noise (left and right)"),
                lacks(
                        whole.withNoise(
                                Measured.noise("left", SURE, SURE, Measured.UNKNOWN),
                                Measured.noise("right", null, null, SURE)),
                        "noise (left)"),
                lacks(whole.with(null), "wow and flutter"),
                lacks(
                        whole.with(Measured.speed(Measured.UNKNOWN, Measured.percent(0.1, 0.01))),
                        ""),
                // a channel of which anything was heard is there
                lacks(
                        nothing.withResponse(Measured.flat("left")),
                        "distortion against level (left); noise (left); wow and flutter"),
                lacks(
                        nothing.withDistortion(Measured.ladder("right", SURE, null, 4.0)),
                        "response (right); noise (right); wow and flutter"),
                lacks(
                        nothing.withNoise(Measured.noise("left", null, null, SURE)),
                        "response (left); distortion against level (left); wow and flutter"),
                lacks(
                        nothing,
                        "response (left and right); distortion against level (left and right);"
                                + " noise (left and right); wow and flutter"));
    }

    private static Arguments lacks(Measured session, String missing) {
        return Arguments.of(session, missing);
    }

    @ParameterizedTest
    @MethodSource("sessions")
    void whatIsMissingIsNamed(Measured session, String expected) {
        assertEquals(
                Arrays.stream(expected.split("; ")).filter(s -> !s.isEmpty()).toList(),
                missing(session));
    }

    /** The mean speed is the machine's alone only against a tape from elsewhere. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {"reference-tape, true", "-, true", "two-pass, false", "off-tape, false"})
    void theMeanSpeedIsAskedForWhereItCanBeKnown(String mode, boolean isAsked) {
        Measured session =
                Measured.whole()
                        .in(mode)
                        .with(Measured.speed(Measured.UNKNOWN, Measured.percent(0.1, 0.01)));
        assertEquals(isAsked ? List.of("mean speed") : List.of(), missing(session));
        assertEquals(List.of(), missing(Measured.whole().in(mode)));
    }

    @Test
    void whyAndHowToKnowItIsSaid() {
        Gap speed =
                KeyFigures.missing(
                                Measured.whole()
                                        .in("reference-tape")
                                        .with(Measured.speed(Measured.UNKNOWN, SURE))
                                        .results())
                        .get(0);
        assertEquals("It was drowned.", speed.why());
        assertTrue(speed.remedy().startsWith("Play the programme's long tone"), speed.remedy());
        Gap noise = KeyFigures.missing(Measured.whole().withNoise().results()).get(0);
        assertEquals("The recording does not tell it.", noise.why());
        assertEquals(Judged.WEIGHTED_NOISE_DISTANCE, noise.figure());
    }

    /** Below 3 % at the loudest tone says enough; 3 % and no figure do not. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "true, 4, true",
                "true, -, true",
                "false, 2.9, true",
                "false, 3, false",
                "false, 4, false",
                "false, -, false"
            })
    void aLadderTellsWhetherThreePercentIsReached(
            boolean isReached, Double loudestK3, boolean tells) {
        Quantity level = isReached ? Measured.db(6, 0.5) : Measured.UNKNOWN;
        Distortion left = Measured.ladder("left", level, null, loudestK3);
        Distortion right = Measured.ladder("right", SURE, null, 4.0);
        assertEquals(
                tells ? List.of() : List.of("distortion against level (left)"),
                missing(Measured.whole().withDistortion(left, right)));
    }

    @Test
    void aLadderOfOneToneTellsItsOwn() {
        Distortion one =
                Measured.ladder("left", Measured.UNKNOWN, null, List.of(Measured.step(8, 2.9)));
        Distortion right = Measured.ladder("right", SURE, null, 4.0);
        assertEquals(List.of(), missing(Measured.whole().withDistortion(one, right)));
    }

    @Test
    void aLadderWithoutTonesTellsNothing() {
        Distortion none = Measured.ladder("left", Measured.UNKNOWN, null, List.of());
        Distortion right = Measured.ladder("right", SURE, null, 4.0);
        assertEquals(
                List.of("distortion against level (left)"),
                missing(Measured.whole().withDistortion(none, right)));
    }
}
