package offtape.core.standard;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Sentences;
import offtape.reference.ReferenceTable;

/**
 * How far the two tracks of a stereo pair lie apart, middle to middle.
 *
 * <p>Source of the named formats: the table {@code track-formats}.
 *
 * @param format the trade's name such as {@code quarter-track}, or null if the distance was given
 * @param mm the distance, 0.1 to 12.7 mm
 * @param toleranceMm how far it may differ, k = 2
 */
public record TrackSpacing(String format, double mm, double toleranceMm) {

    private static final Sentences SAID = Sentences.near(TrackSpacing.class);

    private static final String TABLE = "track-formats";
    private static final double LEAST_MM = 0.1;
    private static final double MOST_MM = 12.7;

    /** A distance that somebody measured or read from a drawing is good to this share. */
    private static final double GIVEN_SHARE = 0.01;

    private static final Pattern FORM = Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?)\\s*(mm)?\\s*");

    /** Refuses distances that no tape has room for. */
    public TrackSpacing {
        if (!(mm >= LEAST_MM && mm <= MOST_MM)) {
            throw new IllegalArgumentException(SAID.say("tracks.outside"));
        }
    }

    /**
     * The pair of a track format.
     *
     * @throws IllegalArgumentException with a plain sentence if there is none of that name
     */
    public static TrackSpacing named(String format) {
        ReferenceTable table = ReferenceTable.load(TABLE);
        for (int row = 0; row < table.size(); row++) {
            if (table.text(row, "format").equals(format.toLowerCase(Locale.ROOT))) {
                return new TrackSpacing(
                        table.text(row, "format"),
                        table.number(row, "spacing"),
                        table.number(row, "tolerance"));
            }
        }
        throw new IllegalArgumentException(
                SAID.say("tracks.no-format", format, String.join(", ", names())));
    }

    /**
     * Reads a distance such as {@code 4.0mm}.
     *
     * @throws IllegalArgumentException with a plain sentence if the text is no such distance
     */
    public static TrackSpacing parse(String text) {
        Matcher m = FORM.matcher(text.toLowerCase(Locale.ROOT));
        if (!m.matches()) {
            throw new IllegalArgumentException(SAID.say("tracks.no-distance", text));
        }
        double mm = Double.parseDouble(m.group(1).replace(',', '.'));
        return new TrackSpacing(null, mm, GIVEN_SHARE * mm);
    }

    /** Width of each track in millimetres, if the format is known. */
    public OptionalDouble widthMm() {
        ReferenceTable table = ReferenceTable.load(TABLE);
        for (int row = 0; row < table.size(); row++) {
            if (table.text(row, "format").equals(format)) {
                return OptionalDouble.of(table.number(row, "track-width"));
            }
        }
        return OptionalDouble.empty();
    }

    /** The names of the formats. */
    public static List<String> names() {
        ReferenceTable table = ReferenceTable.load(TABLE);
        List<String> names = new ArrayList<>();
        for (int row = 0; row < table.size(); row++) {
            names.add(table.text(row, "format"));
        }
        return names;
    }
}
