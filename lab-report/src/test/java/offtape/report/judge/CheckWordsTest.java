package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.report.result.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Checks as somebody reads them who does not know the trade's names. */
class CheckWordsTest {

    private static Verdict.Check check(
            String quantity, double value, String limit, String unit, Double uncertainty) {
        return new Verdict.Check(
                quantity, value, limit, "fail", "made up", unit, uncertainty, 0.0, null);
    }

    /** The place of the last digit is that of the first digit of the uncertainty. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "1.2345, dB, 0.02, 1.23 dB",
                "1.2345, dB, 0.1, 1.2 dB",
                "1.2345, dB, 0.2, 1.2 dB",
                "-1.2345, dB, 0.2, −1.2 dB",
                "1.2345, dB, 1, 1 dB",
                "12.345, dB, 20, 12 dB",
                "1.2345, dB, 0.001, 1.23 dB",
                "1.2345, dB, 0, 1.23 dB",
                "1.2345, dB, -, 1.23 dB",
                "0.16348, %, 0.001, 0.163 %",
                "0.16348, %, 0.0001, 0.163 %",
                "0.16348, %, 0, 0.163 %",
                "0.16348, %, -, 0.163 %",
                "0.16348, %, 0.05, 0.16 %",
                "3.14159, -, -, 3.14"
            })
    void noMoreDigitsThanTheUncertaintyCarries(
            double value, String unit, Double uncertainty, String said) {
        assertEquals(
                List.of(
                        "Not good enough: how equally loud both channels come back (Balance, right"
                                + " re left: "
                                + said
                                + "; the limit: so much)."),
                CheckWords.of(
                        "fails.own",
                        List.of(
                                check(
                                        "Balance, right re left",
                                        value,
                                        "so much",
                                        unit,
                                        uncertainty))));
    }

    /** One sentence a limit: both channels together, other quantities and limits apart. */
    @Test
    void channelsOfALimitAreToldTogether() {
        Verdict.Check left = check("Crosstalk at 1 kHz, left", -30, "at most −40 dB", "dB", 1.0);
        Verdict.Check right = check("Crosstalk at 1 kHz, right", -31, "at most −40 dB", "dB", 1.0);
        Verdict.Check strict = check("Crosstalk at 1 kHz, left", -30, "at most −50 dB", "dB", 1.0);
        Verdict.Check other = check("Balance, right re left", 3, "at most −40 dB", "dB", 1.0);
        String leaks =
                "Too close to call: how little of one channel is heard on the other (Crosstalk";
        assertEquals(
                List.of(
                        leaks
                                + " at 1 kHz, left: −30 dB; Crosstalk at 1 kHz, right: −31 dB; the"
                                + " limit: at most −40 dB).",
                        "Too close to call: how equally loud both channels come back (Balance, right"
                                + " re left: 3 dB; the limit: at most −40 dB).",
                        leaks + " at 1 kHz, left: −30 dB; the limit: at most −50 dB)."),
                CheckWords.of("fails.marginal", List.of(left, other, right, strict)));
        assertEquals(
                "Crosstalk at 1 kHz, left; Balance, right re left",
                CheckWords.names(List.of(left, other, strict)));
    }

    /** Of a quantity that no limit can be set for. */
    @Test
    void whatHasNoPlainNameIsAFigure() {
        assertEquals(
                List.of("Not good enough: a figure (Hum: 1.00 %; the limit: none)."),
                CheckWords.of("fails.own", List.of(check("Hum", 1, "none", "%", 0.01))));
    }
}
