package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.report.compare.Change.Direction;
import offtape.report.compare.Course;
import offtape.report.compare.History;
import offtape.report.result.Session;

/** One machine over time: trends, a chart a figure, and the sessions behind them. */
final class HistoryPage {

    /** Of the range of values, what is left free above and below. */
    private static final double FREE = 0.1;

    private HistoryPage() {}

    /** The page. */
    static String of(Wording words, History history) {
        List<Session> sessions = history.sessions();
        Session latest = sessions.get(sessions.size() - 1);
        String title = Words.machine(latest) + " over time";
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", sessions.size() + " measurements in order", "class", "sheet")
                        .line()
                        .element("h1", title)
                        .line()
                        .element("p", when(history), "class", "identity")
                        .line();
        findings(history).forEach(f -> opening.element("p", f, "class", "findings").line());
        opening.close("header").line().add(trends(history).open());
        List<Section> sections = new ArrayList<>();
        byName(history).forEach((name, courses) -> sections.add(section(history, name, courses)));
        return Page.of(title + " – Offtape report", opening, sections, List.of(latest));
    }

    private static String when(History history) {
        List<Session> sessions = history.sessions();
        return "From "
                + Words.moment(sessions.get(0).madeAt())
                + " to "
                + Words.moment(sessions.get(sessions.size() - 1).madeAt())
                + ". "
                + Words.description(sessions.get(sessions.size() - 1));
    }

    private static List<String> findings(History history) {
        List<String> lines = new ArrayList<>();
        String since = history.servicedDays() == null ? "" : " since the last service";
        for (Direction direction : List.of(Direction.WORSE, Direction.BETTER)) {
            List<Course> gone =
                    history.courses().stream()
                            .filter(c -> c.trend().direction() == direction)
                            .toList();
            if (!gone.isEmpty()) {
                lines.add(
                        (direction == Direction.WORSE ? "Getting worse" : "Getting better")
                                + since
                                + ": "
                                + gone.stream().map(Course::label).collect(Collectors.joining("; "))
                                + ".");
            }
        }
        if (lines.isEmpty()) {
            lines.add("No headline figure moves by more than its scatter" + since + ".");
        }
        lines.addAll(history.leftOut());
        return lines;
    }

    private static Map<String, List<Course>> byName(History history) {
        return history.courses().stream()
                .collect(
                        Collectors.groupingBy(
                                Course::name, LinkedHashMap::new, Collectors.toList()));
    }

    private static DataTable trends(History history) {
        return new DataTable(
                "Trends of the headline figures",
                List.of("Figure", "First", "Latest", "Change a year", "Which way"),
                history.courses().stream()
                        .map(
                                c ->
                                        List.of(
                                                c.label(),
                                                Numbers.full(
                                                        c.points().get(0).figure(), c.signed()),
                                                Numbers.full(
                                                        c.points()
                                                                .get(c.points().size() - 1)
                                                                .figure(),
                                                        c.signed()),
                                                c.trend().perYear().isKnown()
                                                        ? Numbers.full(c.trend().perYear(), true)
                                                        : DataTable.NOTHING,
                                                DirectionWords.of(c.trend().direction(), "trend")))
                        .toList());
    }

    private static Section section(History history, String name, List<Course> courses) {
        String id = "history-" + name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        double[] values =
                courses.stream()
                        .flatMap(c -> c.points().stream())
                        .filter(p -> p.figure().isKnown())
                        .mapToDouble(p -> p.figure().value())
                        .toArray();
        if (values.length == 0) {
            return new Section(id, name, Section.paragraph("No session knows it."));
        }
        String unit =
                courses.stream()
                        .flatMap(c -> c.points().stream())
                        .filter(p -> p.figure().isKnown())
                        .findFirst()
                        .orElseThrow()
                        .figure()
                        .unit();
        double low = Arrays.stream(values).min().orElse(0);
        double high = Arrays.stream(values).max().orElse(1);
        double free = Math.max(FREE * (high - low), 1e-3 * Math.max(1e-3, Math.abs(high)));
        double lastDay = Math.max(1, history.days().get(history.days().size() - 1));
        Chart chart =
                Chart.of(
                        id + "-chart",
                        name,
                        name + " in each session.",
                        Axis.linear("Since the first session, days", 0, lastDay),
                        Axis.linear(name + ", " + unit, low - free, high + free),
                        courses.stream().map(HistoryPage::series).toList());
        if (history.servicedDays() != null
                && history.servicedDays() > 0
                && history.servicedDays() < lastDay) {
            chart =
                    chart.withBands(
                            List.of(
                                    new Chart.Band(
                                            history.servicedDays(), lastDay, "since service")));
        }
        Markup body = Section.figure(name + " in each session.", List.of(chart));
        return new Section(id, name, body.add(table(history, name, courses).folded()));
    }

    private static Series series(Course course) {
        List<Course.Point> known =
                course.points().stream().filter(p -> p.figure().isKnown()).toList();
        boolean whole = course.channel() == null;
        return new Series(
                whole ? "" : Words.sentence(course.channel()),
                whole ? Look.WHOLE : Look.of(course.channel(), false),
                known.stream().mapToDouble(Course.Point::days).toArray(),
                known.stream().mapToDouble(p -> p.figure().value()).toArray(),
                known.stream().mapToInt(p -> Numbers.decimals(p.figure().uncertainty())).toArray());
    }

    private static DataTable table(History history, String name, List<Course> courses) {
        List<String> heads = new ArrayList<>(List.of("Session"));
        courses.forEach(
                c -> heads.add(c.channel() == null ? "Value" : Words.sentence(c.channel())));
        List<List<String>> rows =
                IntStream.range(0, history.sessions().size())
                        .mapToObj(
                                i -> {
                                    List<String> row = new ArrayList<>();
                                    row.add(Words.moment(history.sessions().get(i).madeAt()));
                                    courses.forEach(
                                            c ->
                                                    row.add(
                                                            Numbers.full(
                                                                    c.points().get(i).figure(),
                                                                    c.signed())));
                                    return row;
                                })
                        .toList();
        return new DataTable(name + " by session", heads, rows);
    }
}
