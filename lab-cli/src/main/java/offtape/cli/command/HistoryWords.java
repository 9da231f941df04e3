package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.compare.Course;
import offtape.report.compare.History;

/** The course of the headline figures as lines for the terminal. */
final class HistoryWords {

    private HistoryWords() {}

    /** One line a figure that is known at all. */
    static List<String> lines(History history) {
        List<String> lines = new ArrayList<>();
        for (Course course : history.courses()) {
            List<Quantity> known =
                    course.points().stream()
                            .map(Course.Point::figure)
                            .filter(Quantity::isKnown)
                            .toList();
            if (!known.isEmpty()) {
                lines.add(line(course, known));
            }
        }
        return lines;
    }

    private static String line(Course course, List<Quantity> known) {
        Quantity perYear = course.trend().perYear();
        String trend =
                perYear.isKnown()
                        ? String.format(
                                Locale.ROOT,
                                "%s %s a year (%s)",
                                Figures.signedValue(perYear),
                                Figures.uncertainty(perYear),
                                word(course))
                        : "no trend: " + perYear.reason();
        return String.format(
                Locale.ROOT,
                "%s: %s to %s %s, %s",
                course.label(),
                Figures.value(known.get(0)),
                Figures.value(known.get(known.size() - 1)),
                known.get(0).unit(),
                trend);
    }

    private static String word(Course course) {
        return switch (course.trend().direction()) {
            case BETTER -> "better";
            case WORSE -> "worse";
            case UNCLEAR, UNKNOWN -> "no clear trend";
        };
    }
}
