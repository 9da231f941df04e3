package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.report.compare.Course;
import offtape.report.compare.History;

/** The course of the headline figures as lines for the terminal. */
final class HistoryWords {

    private final Speech speech;

    /** The words spoken on a terminal. */
    HistoryWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** One line a figure that is known at all. */
    List<String> lines(History history) {
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

    private String line(Course course, List<Quantity> known) {
        return speech.say(
                "history.line",
                speech.told(course.label()),
                speech.value(known.get(0)),
                speech.value(known.get(known.size() - 1)),
                known.get(0).unit(),
                trend(course));
    }

    private String trend(Course course) {
        Quantity perYear = course.trend().perYear();
        return perYear.isKnown()
                ? speech.say(key(course), speech.signedValue(perYear), speech.uncertainty(perYear))
                : speech.say("history.no-trend", speech.told(perYear.reason()));
    }

    private static String key(Course course) {
        return switch (course.trend().direction()) {
            case BETTER -> "history.better";
            case WORSE -> "history.worse";
            case UNCLEAR, UNKNOWN -> "history.unclear";
        };
    }
}
