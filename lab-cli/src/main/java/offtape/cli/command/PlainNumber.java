package offtape.cli.command;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers with so many digits and never a power of ten. */
final class PlainNumber {

    private PlainNumber() {}

    static String of(double value, int digits) {
        return new BigDecimal(value)
                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                .toPlainString();
    }
}
