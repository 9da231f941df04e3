package offtape.core.programme;

import com.fasterxml.jackson.databind.JsonNode;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.InertText;
import offtape.core.text.Sentences;

/**
 * Checked reading of one JSON object of a cue sheet.
 *
 * @param node the object
 * @param place the file, for messages
 * @param what the part of the file, for messages
 */
record Fields(JsonNode node, String place, String what) {

    private static final Sentences SAID = Sentences.near(Fields.class);

    private static final int LONGEST_TEXT = 100;

    Fields {
        if (node == null || !node.isObject()) {
            throw new UnusableInputException(SAID.say("not-object", place, what));
        }
    }

    Fields named(String newWhat) {
        return new Fields(node, place, newWhat);
    }

    UnusableInputException refuse(String fault) {
        return new UnusableInputException(SAID.say("refused", place, what, fault));
    }

    private UnusableInputException outside(String key, Object least, Object most) {
        return new UnusableInputException(SAID.say("outside", place, what, key, least, most));
    }

    String text(String key) {
        JsonNode n = node.get(key);
        if (n == null || !n.isTextual() || n.textValue().isBlank()) {
            throw refuse(SAID.say("not-text", key));
        }
        String text = n.textValue();
        // Texts are repeated in messages, where they must not steer a terminal or fill it.
        if (text.length() > LONGEST_TEXT || text.codePoints().anyMatch(InertText::isSteering)) {
            throw refuse(SAID.say("text-too-long", key, LONGEST_TEXT));
        }
        return text;
    }

    void requireText(String key, String expected) {
        JsonNode n = node.get(key);
        if (n == null || !expected.equals(n.textValue())) {
            throw refuse(SAID.say("not-expected", key, expected));
        }
    }

    long whole(String key, long least, long most) {
        JsonNode n = node.get(key);
        if (n == null || !n.isNumber() || n.doubleValue() != Math.rint(n.doubleValue())) {
            throw refuse(SAID.say("not-whole", key));
        }
        double value = n.doubleValue();
        if (!(value >= least && value <= most)) {
            throw outside(key, least, most);
        }
        return (long) value;
    }

    double number(String key, double least, double most) {
        JsonNode n = node.get(key);
        if (n == null || !n.isNumber()) {
            throw refuse(SAID.say("not-number", key));
        }
        double value = n.doubleValue();
        if (!(value >= least && value <= most)) {
            throw outside(key, least, most);
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
        throw refuse(SAID.say("channels"));
    }

    JsonNode list(String key, int most) {
        JsonNode n = node.get(key);
        if (n == null || !n.isArray()) {
            throw refuse(SAID.say("not-list", key));
        }
        if (n.size() > most) {
            throw refuse(SAID.say("too-many-entries", key, most));
        }
        return n;
    }
}
