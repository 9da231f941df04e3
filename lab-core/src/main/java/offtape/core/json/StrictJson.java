package offtape.core.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.Module;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import java.util.OptionalInt;
import offtape.core.fault.BoundedText;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * Reads and writes one kind of description. Unknown members, members that are there twice, values
 * of another kind and anything after the end are refused.
 *
 * @param <T> record that is the description
 */
public final class StrictJson<T> {

    private static final Sentences SAID = Sentences.near(StrictJson.class);

    /** More than any description that people write needs; larger files are refused unread. */
    private static final int MOST_MEBIBYTES = 1;

    private final Class<T> type;
    private final String what;
    private final int mostMebibytes;
    private final JsonMapper mapper;

    /**
     * A reader and writer of files up to 1 MiB.
     *
     * @param what the description in words, such as {@code "a machine's description"}
     * @param modules for values that need more than records
     */
    public StrictJson(Class<T> type, String what, Module... modules) {
        this(type, what, MOST_MEBIBYTES, modules);
    }

    /** The same for files of another size; larger ones are refused unread. */
    public StrictJson(Class<T> type, String what, int mostMebibytes, Module... modules) {
        this.type = type;
        this.what = what;
        this.mostMebibytes = mostMebibytes;
        this.mapper =
                BoundedJson.mapper((long) mostMebibytes << 20)
                        .addModules(modules)
                        .serializationInclusion(JsonInclude.Include.NON_NULL)
                        .build();
    }

    /**
     * Reads a file.
     *
     * @throws UnusableInputException if it cannot be read or used, with the place
     */
    public T read(Path file) {
        return read(text(file), file.toString());
    }

    private String text(Path file) {
        try {
            return BoundedText.read(file, mostMebibytes << 20)
                    .orElseThrow(
                            () ->
                                    new UnusableInputException(
                                            SAID.say(
                                                    "too-large-a-file",
                                                    file,
                                                    what,
                                                    mostMebibytes)));
        } catch (CharacterCodingException e) {
            throw new UnusableInputException(SAID.say("not-utf-8", file), e);
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("unreadable", file), e);
        }
    }

    /**
     * Reads a text.
     *
     * @param from where it is from, for the refusal
     * @throws UnusableInputException if it cannot be used, with the place
     */
    public T read(String text, String from) {
        if (text.isBlank()) {
            throw new UnusableInputException(SAID.say("empty", from));
        }
        try {
            T value = mapper.readValue(text, type);
            if (value == null) {
                throw new UnusableInputException(SAID.say("null", from));
            }
            return value;
        } catch (JsonProcessingException e) {
            throw new UnusableInputException(from + ": " + Refusal.inWords(e), e);
        }
    }

    /**
     * A whole number that is a member of the outermost object, whatever else there is: a version is
     * judged before what may be new in it.
     *
     * @return the number, or nothing if there is none or the text is no object
     * @throws UnusableInputException if the file cannot be read
     */
    public OptionalInt wholeNumber(Path file, String member) {
        try (JsonParser parser = mapper.createParser(text(file))) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return OptionalInt.empty();
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                boolean meant = parser.currentName().equals(member);
                JsonToken value = parser.nextToken();
                if (meant) {
                    return value == JsonToken.VALUE_NUMBER_INT
                                    && parser.getNumberType() == JsonParser.NumberType.INT
                            ? OptionalInt.of(parser.getIntValue())
                            : OptionalInt.empty();
                }
                parser.skipChildren();
            }
            return OptionalInt.empty();
        } catch (IOException e) {
            // what is wrong with the text is told by whoever reads all of it
            return OptionalInt.empty();
        }
    }

    /** The text of a description, indented, ending with a line feed. */
    public String write(T value) {
        try {
            return mapper.writer(JsonLayout.objects()).writeValueAsString(value) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the description could not be written", e);
        }
    }
}
