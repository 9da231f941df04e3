package offtape.core.programme;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.InertText;

/**
 * Checked reading of one JSON object of a cue sheet.
 *
 * @param node the object
 * @param place the file, for messages
 * @param what the part of the file, for messages
 */
record Fields(JsonNode node, String place, String what) {

    private static final int LONGEST_TEXT = 100;

    Fields {
        if (node == null || !node.isObject()) {
            throw new UnusableInputException(
                    place
                            + ": "
                            + what
                            + " is not a JSON object. Write the programme again with"
                            + " \"offtape prepare\".");
        }
    }

    Fields named(String newWhat) {
        return new Fields(node, place, newWhat);
    }

    UnusableInputException refuse(String fault) {
        return new UnusableInputException(
                place
                        + ", "
                        + what
                        + ": "
                        + fault
                        + ". Correct the cue sheet or write the programme"
                        + " again with \"offtape prepare\".");
    }

    String text(String key) {
        JsonNode n = node.get(key);
        if (n == null || !n.isTextual() || n.textValue().isBlank()) {
            throw refuse(key + " is missing or not a text");
        }
        String text = n.textValue();
        // Texts are repeated in messages, where they must not steer a terminal or fill it.
        if (text.length() > LONGEST_TEXT || text.codePoints().anyMatch(InertText::isSteering)) {
            throw refuse(
                    key
                            + " has more than "
                            + LONGEST_TEXT
                            + " characters or holds control characters");
        }
        return text;
    }

    void requireText(String key, String expected) {
        JsonNode n = node.get(key);
        if (n == null || !expected.equals(n.textValue())) {
            throw refuse(key + " is not \"" + expected + "\"");
        }
    }

    long whole(String key, long least, long most) {
        JsonNode n = node.get(key);
        if (n == null || !n.isNumber() || n.doubleValue() != Math.rint(n.doubleValue())) {
            throw refuse(key + " is missing or not a whole number");
        }
        double value = n.doubleValue();
        if (!(value >= least && value <= most)) {
            throw refuse(key + " must lie between " + least + " and " + most);
        }
        return (long) value;
    }

    double number(String key, double least, double most) {
        JsonNode n = node.get(key);
        if (n == null || !n.isNumber()) {
            throw refuse(key + " is missing or not a number");
        }
        double value = n.doubleValue();
        if (!(value >= least && value <= most)) {
            throw refuse(
                    String.format(Locale.ROOT, "%s must lie between %s and %s", key, least, most));
        }
        return value;
    }

    Double optionalNumber(String key, double least, double most) {
        return node.hasNonNull(key) ? (Double) number(key, least, most) : null;
    }

    ChannelSet channels() {
        String key = text("channels");
        for (ChannelSet set : ChannelSet.values()) {
            if (set.key().equals(key)) {
                return set;
            }
        }
        throw refuse("channels must be both, left or right");
    }

    JsonNode list(String key, int most) {
        JsonNode n = node.get(key);
        if (n == null || !n.isArray()) {
            throw refuse(key + " is missing or not a list");
        }
        if (n.size() > most) {
            throw refuse(key + " has more than " + most + " entries");
        }
        return n;
    }
}
