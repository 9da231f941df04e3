package offtape.core.programme;

import java.util.Locale;

/** The channels on which a cue sounds. */
public enum ChannelSet {
    /** Left and right alike. */
    BOTH,
    /** Left only; right is silent. */
    LEFT,
    /** Right only; left is silent. */
    RIGHT;

    /** The name in the cue sheet: {@code both}, {@code left} or {@code right}. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
