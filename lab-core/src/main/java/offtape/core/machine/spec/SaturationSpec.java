package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.within;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * How the tape saturates: a curve without memory between pre- and de-emphasis.
 *
 * @param kind shape of the curve; default {@link Kind#TANH}
 * @param levelAtK3ThreePercentDb level of a low tone, dB re reference, at which the third harmonic
 *     of the bare curve is 3 % of the fundamental; −20 to 40 dB
 * @param secondHarmonicPercent second harmonic of a low tone at reference level, 0 to 10 %, from a
 *     magnetised head or asymmetric bias; default 0
 * @param emphasisMicroseconds time constant of the pre-emphasis, so that highs saturate earlier, 0
 *     (none) to 200 µs; default 0
 */
public record SaturationSpec(
        Kind kind,
        Double levelAtK3ThreePercentDb,
        double secondHarmonicPercent,
        double emphasisMicroseconds) {

    private static final Sentences SAID = Sentences.near(SaturationSpec.class);

    /** Checks the limits and fills in defaults. */
    public SaturationSpec {
        kind = orElse(kind, Kind.TANH);
        given("levelAtK3ThreePercentDb", levelAtK3ThreePercentDb);
        within("levelAtK3ThreePercentDb", levelAtK3ThreePercentDb, -20, 40, "dB");
        within("secondHarmonicPercent", secondHarmonicPercent, 0, 10, "%");
        within("emphasisMicroseconds", emphasisMicroseconds, 0, 200, "µs");
    }

    /** Shape of a saturation curve. */
    public enum Kind {
        /** Hyperbolic tangent. */
        TANH,
        /** x − a·x³ up to its turning point, flat beyond. */
        CUBIC;

        /** The name in files. */
        @JsonValue
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        /**
         * The kind of a name.
         *
         * @throws UnusableInputException if there is none of that name
         */
        @JsonCreator
        public static Kind ofKey(String key) {
            for (Kind kind : values()) {
                if (kind.key().equals(key)) {
                    return kind;
                }
            }
            throw new UnusableInputException(SAID.say("saturation-kind"));
        }
    }
}
