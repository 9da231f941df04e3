package offtape.report.fault;

import java.util.Arrays;
import offtape.core.text.Sentences;

/** What can hurt somebody, or a tape, in looking for a fault or mending it. */
public enum Caution {
    /** Work inside the machine. */
    MAINS("mains"),
    /** Work near what turns. */
    MOVING_TAPE("moving-tape"),
    /** Demagnetising. */
    DEMAGNETISER("demagnetiser"),
    /** Steady tones. */
    TEST_TONE("test-tone");

    private static final Sentences SAID = Sentences.near(Caution.class);

    private final String key;

    Caution(String key) {
        this.key = key;
    }

    /** As what is known of a fault names it. */
    public String key() {
        return key;
    }

    /** Plain sentences. */
    public String words() {
        return SAID.say("caution-" + key);
    }

    /**
     * The caution of a key.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static Caution of(String key) {
        return Arrays.stream(values())
                .filter(c -> c.key.equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no caution \"" + key + "\""));
    }
}
