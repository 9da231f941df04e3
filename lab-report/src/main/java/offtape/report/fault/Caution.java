package offtape.report.fault;

import java.util.Arrays;

/** What can hurt somebody, or a tape, in looking for a fault or mending it. */
public enum Caution {
    /** Work inside the machine. */
    MAINS(
            "mains",
            "Mains voltage can kill, and parts inside stay charged after the plug is pulled. Leave"
                    + " work inside the machine to a qualified technician, and follow the rules of"
                    + " your country."),
    /** Work near what turns. */
    MOVING_TAPE(
            "moving-tape",
            "Keep fingers, hair and sleeves off reels, capstan and roller while they turn; clean and"
                    + " look only when they stand still."),
    /** Demagnetising. */
    DEMAGNETISER(
            "demagnetiser",
            "Switch the machine off and take every tape well away before a demagnetiser is switched"
                    + " on: it erases what is near. Switch it on and off at arm's length from the"
                    + " heads, and keep it away from pacemakers."),
    /** Steady tones. */
    TEST_TONE(
            "test-tone",
            "Turn monitors and headphones down before a test tone plays: a steady loud tone harms"
                    + " ears and tweeters.");

    private final String key;
    private final String words;

    Caution(String key, String words) {
        this.key = key;
        this.words = words;
    }

    /** As what is known of a fault names it. */
    public String key() {
        return key;
    }

    /** Plain sentences. */
    public String words() {
        return words;
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
