package offtape.core.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * What a Broadcast WAV file says of itself in its chunk {@code bext}, so that a workstation can put
 * the sound where it belongs and a reader knows where it has been. Source: EBU Tech 3285
 * (Specification of the Broadcast Wave Format), version 1; the lines of the history after EBU
 * Recommendation R 98.
 *
 * <p>Texts are of printable ASCII, as the format asks: whatever else there is becomes a question
 * mark, and what is too long is cut.
 *
 * @param description what is heard, up to 256 characters
 * @param date when the sound began, as yyyy-mm-dd; empty if that is not said
 * @param time the same as hh:mm:ss; empty if that is not said
 * @param firstFrame where the sound begins in its project or its day, in frames since midnight
 * @param history what the sound has been through, a line each, without that of the file itself
 */
public record BroadcastNote(
        String description, String date, String time, long firstFrame, List<String> history) {

    static final int DESCRIPTION = 256;
    static final int DATE = 10;
    static final int TIME = 8;

    private static final int LONGEST_LINE = 256;
    private static final int MOST_LINES = 100;

    /**
     * Makes every text what the format allows.
     *
     * @throws IllegalArgumentException if the first frame is negative
     */
    public BroadcastNote {
        if (firstFrame < 0) {
            throw new IllegalArgumentException("frame " + firstFrame + " since midnight");
        }
        description = plain(description, DESCRIPTION);
        date = plain(date, DATE);
        time = plain(time, TIME);
        history = history.stream().limit(MOST_LINES).map(l -> plain(l, LONGEST_LINE)).toList();
    }

    /** A note that says what is heard and nothing of when and whence. */
    public static BroadcastNote of(String description) {
        return new BroadcastNote(description, "", "", 0, List.of());
    }

    /** The same of another sound that came of this one and lies where this one lay. */
    public BroadcastNote describing(String other) {
        return new BroadcastNote(other, date, time, firstFrame, history);
    }

    /**
     * With another station of the sound's way.
     *
     * @param parts letter and value as in {@code A=ANALOGUE}; a comma in a value becomes a
     *     semicolon
     */
    public BroadcastNote through(String... parts) {
        List<String> lines = new ArrayList<>(history);
        lines.add(line(parts));
        return new BroadcastNote(description, date, time, firstFrame, lines);
    }

    /** A line of the history. */
    static String line(String... parts) {
        List<String> said = new ArrayList<>();
        for (String part : parts) {
            said.add(Objects.requireNonNull(part).replace(',', ';'));
        }
        return String.join(",", said);
    }

    private static String plain(String text, int most) {
        StringBuilder plain = new StringBuilder();
        text.codePoints()
                .limit(most)
                .forEach(c -> plain.append(c >= ' ' && c < 0x7F ? (char) c : '?'));
        return plain.toString();
    }
}
