package offtape.cli.manual;

import java.util.Locale;

/**
 * A page of a manual under construction, in the language of {@code man(7)}. Whatever is added as
 * text comes out as itself: nothing in it is taken for a request or an escape.
 */
final class Roff {

    private final StringBuilder out = new StringBuilder();

    /** The head of the page, which has to come first. */
    Roff title(String name, String date, String software) {
        // names of options and commands that are parted by a hyphen at the end of a line mislead
        return request("TH", name, "1", date, software, "User commands").request("nh");
    }

    /** Starts a section. */
    Roff section(String heading) {
        return request("SH", heading);
    }

    /** Starts a paragraph. */
    Roff paragraph() {
        return request("PP");
    }

    /** An entry of a list: what is described, then its description, indented. */
    Roff entry(Roff what, String description) {
        request("TP");
        out.append(what.out).append('\n');
        return line(description);
    }

    /** A line of text, which is filled together with its neighbours. */
    Roff line(String text) {
        out.append(guarded(escaped(text))).append('\n');
        return this;
    }

    /** Lines that stay as they are. */
    Roff literal(Iterable<String> lines) {
        out.append(".nf\n");
        lines.forEach(l -> out.append(guarded(typed(l))).append('\n'));
        out.append(".fi\n");
        return this;
    }

    /** Within a line: what is typed as it stands. */
    Roff bold(String text) {
        out.append("\\fB").append(typed(text)).append("\\fR");
        return this;
    }

    /** Within a line: what something else is put in place of. */
    Roff italic(String text) {
        out.append("\\fI").append(typed(text)).append("\\fR");
        return this;
    }

    /** Within a line: what is typed, in the font of the text. */
    Roff asTyped(String text) {
        out.append(typed(text));
        return this;
    }

    /** Within a line: plain text. */
    Roff plain(String text) {
        out.append(escaped(text));
        return this;
    }

    /** Ends a line that was put together of parts. */
    Roff end() {
        out.append('\n');
        return this;
    }

    @Override
    public String toString() {
        return out.toString();
    }

    private Roff request(String name, String... words) {
        out.append('.').append(name);
        for (String word : words) {
            out.append(" \"").append(escaped(word).replace("\"", "\\(dq")).append('"');
        }
        out.append('\n');
        return this;
    }

    /** A full stop or an apostrophe at the start of a line begins a request. */
    private static String guarded(String line) {
        return line.startsWith(".") || line.startsWith("'") ? "\\&" + line : line;
    }

    /**
     * What is typed: a hyphen there is the character of the keyboard, which can be searched for.
     */
    private static String typed(String text) {
        return escaped(text).replace("-", "\\-");
    }

    private static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        text.codePoints().forEach(c -> escaped.append(escaped(c)));
        return escaped.toString();
    }

    private static String escaped(int codePoint) {
        return switch (codePoint) {
            case '\\' -> "\\e";
            case '~' -> "\\(ti";
            case '^' -> "\\(ha";
            case '`' -> "\\(ga";
            case '\'' -> "\\(aq";
            default ->
                    codePoint < 0x80
                            ? Character.toString(codePoint)
                            : String.format(Locale.ROOT, "\\[u%04X]", codePoint);
        };
    }
}
