package offtape.report.apply.correct;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import offtape.core.filter.EqualiserBand;

/** Numbers as one dials them in. */
final class Dial {

    private static final int FREQUENCY_DIGITS = 3;
    private static final int Q_DIGITS = 2;
    private static final double STEPS_PER_DB = 10;

    private Dial() {}

    /** The band with three digits of frequency, two of Q and a tenth of a decibel. */
    static EqualiserBand near(EqualiserBand band) {
        return new EqualiserBand(
                band.kind(),
                digits(band.frequencyHz(), FREQUENCY_DIGITS),
                level(band.gainDb()),
                digits(band.q(), Q_DIGITS));
    }

    /** A level to a tenth of a decibel. */
    static double level(double db) {
        double tenths = Math.rint(db * STEPS_PER_DB) / STEPS_PER_DB;
        return tenths == 0 ? 0 : tenths;
    }

    private static double digits(double value, int digits) {
        return new BigDecimal(value)
                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                .doubleValue();
    }
}
