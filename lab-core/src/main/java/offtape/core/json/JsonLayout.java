package offtape.core.json;

import com.fasterxml.jackson.core.PrettyPrinter;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;

/** How JSON is laid out for people: two blanks a level and the same line ends on every system. */
public final class JsonLayout {

    private static final DefaultIndenter INDENTER = new DefaultIndenter("  ", "\n");

    private JsonLayout() {}

    /** Members on lines of their own, the values of a list on one line. */
    public static PrettyPrinter objects() {
        return new DefaultPrettyPrinter().withObjectIndenter(INDENTER);
    }

    /** Members and the values of lists on lines of their own. */
    public static PrettyPrinter objectsAndLists() {
        return new DefaultPrettyPrinter().withObjectIndenter(INDENTER).withArrayIndenter(INDENTER);
    }
}
