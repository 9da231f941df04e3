package offtape.report.render;

import offtape.core.text.InertText;

/**
 * HTML and SVG text under construction. Text and attribute values are always escaped and hold
 * nothing that steers; elements are written so that the result is well-formed XML too. Only {@link
 * #style} and {@link #script} take text as it is.
 */
final class Markup {

    /** What stands before the text of a script. */
    static final String SCRIPT_START = "/*<![CDATA[*/";

    /** What stands behind it. */
    static final String SCRIPT_END = "/*]]>*/";

    private final StringBuilder out = new StringBuilder();

    /** Starts an element; {@code attributes} are names and values in turn. */
    Markup open(String tag, String... attributes) {
        startTag(tag, attributes);
        out.append('>');
        return this;
    }

    /** Ends an element. */
    Markup close(String tag) {
        out.append("</").append(tag).append('>');
        return this;
    }

    /** An element without content, such as {@code meta} or {@code path}. */
    Markup empty(String tag, String... attributes) {
        startTag(tag, attributes);
        out.append("/>");
        return this;
    }

    /** Plain text. */
    Markup text(String text) {
        escape(text);
        return this;
    }

    /** An element that holds plain text. */
    Markup element(String tag, String text, String... attributes) {
        return open(tag, attributes).text(text).close(tag);
    }

    /** Everything in {@code other}. */
    Markup add(Markup other) {
        out.append(other.out);
        return this;
    }

    /** A line feed, to keep the source of a page readable. */
    Markup line() {
        out.append('\n');
        return this;
    }

    /** A style sheet of the program's own; never anything a user wrote. */
    Markup style(String css) {
        out.append("<style>").append(css).append("</style>");
        return this;
    }

    /**
     * A script of the program's own; never anything a user wrote. What XML would read as markup in
     * it is hidden from it; a browser sees that as comments of the script.
     */
    Markup script(String text, String... attributes) {
        open("script", attributes);
        out.append(SCRIPT_START).append(text).append(SCRIPT_END);
        return close("script");
    }

    @Override
    public String toString() {
        return out.toString();
    }

    private void startTag(String tag, String... attributes) {
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ').append(attributes[i]).append("=\"");
            escape(attributes[i + 1]);
            out.append('"');
        }
    }

    private void escape(String text) {
        text.codePoints().forEach(this::escape);
    }

    private void escape(int codePoint) {
        switch (codePoint) {
            case '&' -> out.append("&amp;");
            case '<' -> out.append("&lt;");
            case '>' -> out.append("&gt;");
            case '"' -> out.append("&quot;");
            case '\'' -> out.append("&#39;");
            default -> out.appendCodePoint(isSeen(codePoint) ? codePoint : 0xFFFD);
        }
    }

    /** Of the characters that XML 1.0 allows (fifth edition, production 2) those that are seen. */
    private static boolean isSeen(int c) {
        return c == '\t'
                || c == '\n'
                || c == '\r'
                || !InertText.isSteering(c) && c != 0xFFFE && c != 0xFFFF;
    }
}
