package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import offtape.core.unit.Quantity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class NumbersTest {

    /**
     * The first row is the worked example of JCGM 100:2008, 7.2.6 (10.057 62 Ω with an uncertainty
     * of 27 mΩ is given as 10.058 Ω); from memory. The others follow from the stated rule by hand.
     */
    @ParameterizedTest
    @CsvSource({
        "10.05762, 0.027, 10.058, 0.027",
        "0.11234, 0.004, 0.112, 0.004",
        "-0.41234, 0.00204, −0.412, 0.002",
        "-56.23, 0.31, −56.2, 0.3",
        "1234.5, 96, 1200, 100",
        "0.5, 0.0961, 0.5, 0.1",
        "-0.0004, 0.03, 0.00, 0.03",
        "5.1, 0.15, 5.10, 0.15",
        "2.123456, 0.000001, 2.1235, < 0.0001",
        "2.5, 0, 2.5000, < 0.0001"
    })
    void digitsEndWhereTheUncertaintyDoes(
            double value, double uncertainty, String shownValue, String shownUncertainty) {
        Quantity figure = Quantity.known(value, "u", uncertainty);
        assertEquals(shownValue + "\u00a0u", Numbers.value(figure, false));
        assertEquals("±\u00a0" + shownUncertainty + "\u00a0u", Numbers.uncertainty(figure));
    }

    /** As above without a value; beyond the decimal point digits are counted backwards. */
    @ParameterizedTest
    @CsvSource({"0.12, 2", "96, -2", "NaN, 0", "Infinity, 0"})
    void anUncertaintyAllowsSoManyDecimals(double uncertainty, int decimals) {
        assertEquals(decimals, Numbers.decimals(uncertainty));
    }

    @ParameterizedTest
    @CsvSource({
        "0.1234, 2, 2",
        "0.0996, 2, 2",
        "0.00077, 2, 5",
        "12.3, 2, 0",
        "123, 2, 0",
        "1e-9, 2, 6",
        "0, 2, 0",
        "-0.5, 3, 3"
    })
    void significantDigitsTakeSoManyDecimals(double value, int digits, int decimals) {
        assertEquals(decimals, Numbers.decimals(value, digits));
    }

    @Test
    void hertzBecomeKilohertzFromOneThousand() {
        assertEquals("15.92\u00a0kHz", Numbers.value(Quantity.known(15_923, "Hz", 60), false));
        assertEquals("±\u00a00.06\u00a0kHz", Numbers.uncertainty(Quantity.known(15_923, "Hz", 60)));
        assertEquals("38.2\u00a0Hz", Numbers.frequency(38.24));
        assertEquals("1\u00a0kHz", Numbers.frequency(1000));
    }

    @Test
    void signsArePrintedAsSigns() {
        assertEquals("+6.4", Numbers.signed(6.44, 1));
        assertEquals("−6.4", Numbers.signed(-6.44, 1));
        assertEquals("0.0", Numbers.signed(-0.04, 1));
        assertEquals("0.0", Numbers.signed(0.04, 1));
    }

    @Test
    void whatIsNoNumberIsADash() {
        assertEquals("–", Numbers.decimal(Double.NaN, 1));
        assertEquals("–", Numbers.signed(Double.NEGATIVE_INFINITY, 1));
        assertEquals("–", Numbers.significant(Double.POSITIVE_INFINITY, 3));
    }
}
