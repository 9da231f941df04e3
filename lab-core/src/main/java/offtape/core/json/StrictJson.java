package offtape.core.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.Module;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;

/**
 * Reads and writes one kind of description. Unknown members, members that are there twice, values
 * of another kind and anything after the end are refused.
 *
 * @param <T> record that is the description
 */
public final class StrictJson<T> {

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
        String text;
        try {
            if (Files.size(file) > (long) mostMebibytes << 20) {
                throw new UnusableInputException(
                        file + " is larger than " + what + " can be (" + mostMebibytes + " MiB).");
            }
            text = Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new UnusableInputException(file + " is not text in UTF-8.", e);
        } catch (IOException e) {
            throw new UnusableInputException(
                    file + " cannot be read. Check that it is there and may be read.", e);
        }
        return read(text, file.toString());
    }

    /**
     * Reads a text.
     *
     * @param from where it is from, for the refusal
     * @throws UnusableInputException if it cannot be used, with the place
     */
    public T read(String text, String from) {
        try {
            T value = mapper.readValue(text, type);
            if (value == null) {
                throw new UnusableInputException(from + " holds no object but null.");
            }
            return value;
        } catch (JsonProcessingException e) {
            throw new UnusableInputException(from + ": " + Refusal.inWords(e), e);
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
