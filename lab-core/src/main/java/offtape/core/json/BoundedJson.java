package offtape.core.json;

import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;

/**
 * The one place in which mappers are made. What they read may come from anybody: its size, depth
 * and the length of its texts, names and numbers are bounded, members that are there twice,
 * anything after the end, numbers that are not finite and empty entries of lists (null) are
 * refused, and no text chooses a class. What they write holds no character that steers a terminal
 * or a page.
 */
public final class BoundedJson {

    /** Several times the depth of anything written here, in objects and lists. */
    private static final int MOST_DEPTH = 40;

    /** Longer than any note; nothing is stored as text that is not for reading. */
    private static final int LONGEST_TEXT = 100_000;

    private static final int LONGEST_NAME = 1000;

    /** A double in full takes 25 characters; longer ones take ever more time to read. */
    private static final int LONGEST_NUMBER = 100;

    private BoundedJson() {}

    /**
     * A mapper to be made up with what one kind of text needs.
     *
     * @param mostCharacters longest text that is read
     */
    public static JsonMapper.Builder mapper(long mostCharacters) {
        StreamReadConstraints bounds =
                StreamReadConstraints.builder()
                        .maxDocumentLength(mostCharacters)
                        .maxNestingDepth(MOST_DEPTH)
                        .maxStringLength(LONGEST_TEXT)
                        .maxNameLength(LONGEST_NAME)
                        .maxNumberLength(LONGEST_NUMBER)
                        .build();
        JsonFactory factory =
                new JsonFactoryBuilder()
                        .streamReadConstraints(bounds)
                        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                        .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                        .characterEscapes(new InertEscapes())
                        .build();
        return JsonMapper.builder(factory)
                .addModule(new FiniteNumbers())
                .defaultSetterInfo(JsonSetter.Value.forContentNulls(Nulls.FAIL))
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS);
    }
}
