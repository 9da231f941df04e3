package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;

/** Lines of a narrow table with one column a channel, and text set to a width. */
final class Columns {

    private static final int LABEL = 15;
    private static final int COLUMN = 14;

    private Columns() {}

    /** A label, a figure a channel, and what they are measured against. */
    static String row(String label, int channels, IntFunction<String> figure, String unit) {
        StringBuilder line = new StringBuilder(pad(label, LABEL));
        for (int c = 0; c < channels; c++) {
            String text = figure.apply(c);
            line.append(" ".repeat(Math.max(1, COLUMN - text.length()))).append(text);
        }
        return (line + "   " + unit).stripTrailing();
    }

    /** A label and a sentence. */
    static String line(String label, String text) {
        return pad(label, LABEL) + "  " + text;
    }

    private static String pad(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }

    /** Breaks text at spaces into lines of a width; later lines are indented like the first. */
    static List<String> wrap(String first, String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.split(" ")) {
            if (!empty && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line = new StringBuilder(" ".repeat(first.length()));
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }
}
