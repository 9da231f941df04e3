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

/**
 * One machine over time: trends, a chart a figure, and the sessions behind them.
 *
 * @param words in the reader's language
 */
record HistoryPage(Wording words) {

    /** Of the range of values, what is left free above and below. */
    private static final double FREE = 0.1;

    /** The page. */
    static String of(Wording words, History history) {
        return new HistoryPage(words).page(history);
    }

    private String page(History history) {
        List<Session> sessions = history.sessions();
        Session latest = sessions.get(sessions.size() - 1);
        String title = words.say("history.title", words.machine(latest));
        String count = words.say("history.measurements", sessions.size());
        Markup opening =
                new Markup()
                        .open("header")
                        .line()
                        .element("p", count, "class", "sheet")
                        .line()
                        .element("h1", title)
                        .line()
                        .element("p", when(history), "class", "identity")
                        .line();
        findings(history).forEach(f -> opening.element("p", f, "class", "findings").line());
        opening.close("header").line().add(trends(history).open());
        List<Section> sections = new ArrayList<>();
        byName(history).forEach((name, courses) -> sections.add(section(history, name, courses)));
        String pageTitle = words.say("history.page-title", title);
        return Page.of(words, pageTitle, opening, sections, List.of(latest));
    }

    private String when(History history) {
        List<Session> sessions = history.sessions();
        Session latest = sessions.get(sessions.size() - 1);
        return words.say(
                "history.when",
                words.moment(sessions.get(0).madeAt()),
                words.moment(latest.madeAt()),
                words.description(latest));
    }

    private List<String> findings(History history) {
        List<String> lines = new ArrayList<>();
        String since = history.servicedDays() == null ? "overall" : "since-service";
        for (Direction direction : List.of(Direction.WORSE, Direction.BETTER)) {
            List<Course> gone =
                    history.courses().stream()
                            .filter(c -> c.trend().direction() == direction)
                            .toList();
            if (!gone.isEmpty()) {
                lines.add(
                        words.say(
                                (direction == Direction.WORSE
                                                ? "history.getting-worse-"
                                                : "history.getting-better-")
                                        + since,
                                gone.stream().map(this::label).collect(Collectors.joining("; "))));
            }
        }
        if (lines.isEmpty()) {
            lines.add(words.say("history.nothing-moves-" + since));
        }
        history.leftOut().forEach(reason -> lines.add(words.told(reason)));
        return lines;
    }

    private String label(Course course) {
        return FigureNames.of(words, course.name(), course.channel());
    }

    private static Map<String, List<Course>> byName(History history) {
        return history.courses().stream()
                .collect(
                        Collectors.groupingBy(
                                Course::name, LinkedHashMap::new, Collectors.toList()));
    }

    private DataTable trends(History history) {
        return new DataTable(
                words.say("history.trends"),
                List.of(
                        words.say("history.column-figure"),
                        words.say("history.column-first"),
                        words.say("history.column-latest"),
                        words.say("history.column-change"),
                        words.say("history.column-direction")),
                history.courses().stream()
                        .map(
                                c ->
                                        List.of(
                                                label(c),
                                                words.full(c.points().get(0).figure(), c.signed()),
                                                words.full(
                                                        c.points()
                                                                .get(c.points().size() - 1)
                                                                .figure(),
                                                        c.signed()),
                                                c.trend().perYear().isKnown()
                                                        ? words.full(c.trend().perYear(), true)
                                                        : DataTable.NOTHING,
                                                DirectionWords.of(
                                                        words,
                                                        c.trend().direction(),
                                                        "history.no-clear-trend")))
                        .toList());
    }

    private Section section(History history, String name, List<Course> courses) {
        String id = "history-" + name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        String told = words.told(name);
        double[] values =
                courses.stream()
                        .flatMap(c -> c.points().stream())
                        .filter(p -> p.figure().isKnown())
                        .mapToDouble(p -> p.figure().value())
                        .toArray();
        if (values.length == 0) {
            return new Section(
                    id, told, Section.paragraph(words, words.say("history.no-session-knows")));
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
        String caption = words.say("history.caption", told);
        Chart chart =
                Chart.of(
                        id + "-chart",
                        told,
                        caption,
                        Axis.linear(words.say("page.axis-since"), 0, lastDay),
                        Axis.linear(told + ", " + unit, low - free, high + free),
                        courses.stream().map(this::series).toList());
        if (history.servicedDays() != null
                && history.servicedDays() > 0
                && history.servicedDays() < lastDay) {
            chart =
                    chart.withBands(
                            List.of(
                                    new Chart.Band(
                                            history.servicedDays(),
                                            lastDay,
                                            words.say("history.since-service"))));
        }
        Markup body = Section.figure(words, caption, List.of(chart));
        return new Section(id, told, body.add(table(history, told, courses).folded(words)));
    }

    private Series series(Course course) {
        List<Course.Point> known =
                course.points().stream().filter(p -> p.figure().isKnown()).toList();
        boolean whole = course.channel() == null;
        return new Series(
                whole ? "" : words.sentence(words.channel(course.channel())),
                whole ? Look.WHOLE : Look.of(course.channel(), false),
                known.stream().mapToDouble(Course.Point::days).toArray(),
                known.stream().mapToDouble(p -> p.figure().value()).toArray(),
                known.stream().mapToInt(p -> Numbers.decimals(p.figure().uncertainty())).toArray());
    }

    private DataTable table(History history, String name, List<Course> courses) {
        List<String> heads = new ArrayList<>(List.of(words.say("history.column-session")));
        courses.forEach(
                c ->
                        heads.add(
                                c.channel() == null
                                        ? words.say("history.column-value")
                                        : words.sentence(words.channel(c.channel()))));
        List<List<String>> rows =
                IntStream.range(0, history.sessions().size())
                        .mapToObj(
                                i -> {
                                    List<String> row = new ArrayList<>();
                                    row.add(words.moment(history.sessions().get(i).madeAt()));
                                    courses.forEach(
                                            c ->
                                                    row.add(
                                                            words.full(
                                                                    c.points().get(i).figure(),
                                                                    c.signed())));
                                    return row;
                                })
                        .toList();
        return new DataTable(words.say("history.by-session", name), heads, rows);
    }
}
