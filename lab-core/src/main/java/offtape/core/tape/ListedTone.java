package offtape.core.tape;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.Range;
import offtape.core.text.Sentences;

/**
 * A tone that a tape holds.
 *
 * @param frequencyHz 20 to 25 000 Hz; a list refuses a tone without it
 * @param levelDb level it was recorded at, dB re the tape's reference level, −60 to +20, or null if
 *     not stated
 * @param seconds how long it lasts, for people, or null
 * @param purpose {@code reference}, {@code speed}, {@code azimuth}, {@code response} or null
 */
public record ListedTone(Double frequencyHz, Double levelDb, Double seconds, Purpose purpose) {

    private static final Sentences SAID = Sentences.near(ListedTone.class);

    /** Checks the limits. */
    public ListedTone {
        Range.within("frequencyHz", frequencyHz, 20, 25_000, "Hz");
        Range.within("levelDb", levelDb, -60, 20, "dB");
        Range.within("seconds", seconds, 0.1, 7200, "s");
    }

    /** What a tone is there for. */
    public enum Purpose {
        /** The zero of every level. */
        REFERENCE,
        /** Speed, wow and flutter. */
        SPEED,
        /** Setting the angle of the head. */
        AZIMUTH,
        /** One of those that show the response. */
        RESPONSE;

        /** The purpose of a word. */
        @JsonCreator
        public static Purpose of(String word) {
            for (Purpose p : values()) {
                if (p.word().equals(word)) {
                    return p;
                }
            }
            throw new UnusableInputException(SAID.say("purpose"));
        }

        /** As it stands in the list. */
        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
