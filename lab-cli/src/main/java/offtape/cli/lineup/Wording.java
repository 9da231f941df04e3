package offtape.cli.lineup;

import offtape.cli.terminal.Terminal;
import offtape.core.text.Language;
import offtape.core.text.Phrases;

/**
 * How a line-up speaks to its reader: texts by key and numbers in one language. Numbers that round
 * to nought carry no sign. Immutable.
 */
public final class Wording {

    private final Phrases phrases;

    private Wording(Phrases phrases) {
        this.phrases = phrases;
    }

    /** The wording of a terminal. */
    public static Wording on(Terminal terminal) {
        return new Wording(terminal.phrases(Wording.class));
    }

    /** The wording of a language. */
    public static Wording in(Language language) {
        return new Wording(Phrases.of(language, Wording.class));
    }

    /** A text; numbers among the arguments are written as the language does. */
    String say(String key, Object... arguments) {
        return phrases.say(key, arguments);
    }

    /** An English sentence in the reader's language. */
    String told(String english) {
        return phrases.told(english);
    }

    /** A number with so many places. */
    String of(double value, int places) {
        return phrases.number(Decimals.of(value, places));
    }

    /** A number with so many places and a sign. */
    String signed(double value, int places) {
        return phrases.number(Decimals.signed(value, places));
    }

    /** A frequency, such as 1 kHz, 3150 Hz or 999.8 Hz. */
    String hertz(double hz) {
        return phrases.number(Decimals.hertz(hz));
    }

    /** A channel within a sentence. */
    String channel(int channel) {
        return say(channel == 0 ? "lineup.left" : "lineup.right");
    }

    /** A channel at the start of a sentence. */
    String first(int channel) {
        return say(channel == 0 ? "lineup.first-left" : "lineup.first-right");
    }
}
