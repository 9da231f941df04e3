package offtape.core.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Held against exact decimal arithmetic of the platform, to the last bit. */
class SignificantDigitsTest {

    @Test
    void roundsAsExactArithmeticDoes() {
        Random random = new Random(12);
        for (int i = 0; i < 100_000; i++) {
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(45) - 25);
            assertSame(value, 9);
            assertSame(Math.rint(value), 5);
        }
    }

    @Test
    void decidesHalvesAndPowersOfTenExactly() {
        for (double value :
                new double[] {
                    0.5,
                    2.5,
                    0.125,
                    1234567.125,
                    123456789.5,
                    999999999.5,
                    99999.99995,
                    1e9,
                    1e8,
                    0.1,
                    1e-5,
                    1e-13,
                    1e-14,
                    1e22,
                    1e23,
                    4.9e-324,
                    Double.MAX_VALUE,
                    0.999999999949,
                    1.00000000050000000001,
                    9.9999999949999999
                }) {
            for (int digits = 1; digits <= 12; digits++) {
                assertSame(value, digits);
                assertSame(-value, digits);
            }
        }
        assertEquals(0.0, SignificantDigits.rounded(-0.0, 9));
    }

    /** Just below a power of ten the logarithm may come out as that of the power. */
    @Test
    void nextToPowersOfTen() {
        for (int power = -30; power <= 30; power++) {
            double ten = Double.parseDouble("1e" + power);
            double[] near = {Math.nextDown(ten), ten, Math.nextUp(ten)};
            for (int digits = 1; digits <= 12; digits++) {
                for (double value : near) {
                    assertSame(value, digits);
                    assertSame(value * (1 - 1e-14), digits);
                    assertSame(-value, digits);
                }
            }
        }
    }

    private static void assertSame(double value, int digits) {
        double exact =
                new BigDecimal(value)
                        .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                        .doubleValue();
        assertEquals(exact, SignificantDigits.rounded(value, digits), () -> value + ", " + digits);
    }
}
