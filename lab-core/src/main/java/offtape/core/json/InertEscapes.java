package offtape.core.json;

import com.fasterxml.jackson.core.SerializableString;
import com.fasterxml.jackson.core.io.CharacterEscapes;
import com.fasterxml.jackson.core.io.SerializedString;
import java.util.Locale;
import offtape.core.text.InertText;

/**
 * Writes steering characters as their numbers, so that the same text is read back and yet nothing
 * that prints the JSON is steered.
 */
final class InertEscapes extends CharacterEscapes {

    private static final long serialVersionUID = 1L;
    private static final int DELETE = 0x7F;

    @Override
    public int[] getEscapeCodesForAscii() {
        int[] codes = standardAsciiEscapesForJSON();
        codes[DELETE] = ESCAPE_STANDARD;
        return codes;
    }

    @Override
    public SerializableString getEscapeSequence(int character) {
        // halves of a pair come one by one, and no pair steers
        return InertText.isSteering(character) && !Character.isSurrogate((char) character)
                ? new SerializedString(String.format(Locale.ROOT, "\\u%04X", character))
                : null;
    }
}
