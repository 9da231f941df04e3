package offtape.report.compare;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Results;
import offtape.report.result.Session;

/**
 * One machine over many sessions: the content of {@code history.json}.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param sessions those that were measured alike, in order of time
 * @param days since the first of them, one each
 * @param servicedDays the last service, days since the first session, or null if none was told
 * @param leftOut why sessions were left out, a sentence each
 * @param courses the headline figures
 */
public record History(
        String format,
        int version,
        List<Session> sessions,
        List<Double> days,
        @JsonInclude(JsonInclude.Include.NON_NULL) Double servicedDays,
        List<String> leftOut,
        List<Course> courses) {

    private static final Sentences SAID = Sentences.near(History.class);

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-history";

    /** The version of the format written here. */
    public static final int VERSION = 1;

    private static final double SECONDS_A_DAY = 86_400;

    /** Copies the lists. */
    public History {
        sessions = List.copyOf(sessions);
        days = List.copyOf(days);
        leftOut = List.copyOf(leftOut);
        courses = List.copyOf(courses);
    }

    /** A session and when it was. */
    private record Dated(Results results, Instant moment) {

        double daysSince(Instant first) {
            return Duration.between(first, moment).toSeconds() / SECONDS_A_DAY;
        }
    }

    /**
     * Puts sessions in order. The latest says what the others must be like.
     *
     * @param serviced when the machine was serviced last, or null; trends begin there
     * @throws UnusableInputException if fewer than two are left
     */
    public static History of(List<Results> all, Instant serviced) {
        List<String> leftOut = new ArrayList<>();
        List<Dated> dated = new ArrayList<>();
        for (Results r : all) {
            String madeAt = Objects.requireNonNullElse(r.session().madeAt(), "");
            try {
                dated.add(new Dated(r, Instant.parse(madeAt)));
            } catch (DateTimeParseException e) {
                leftOut.add(SAID.say("undated"));
            }
        }
        dated.sort(Comparator.comparing(Dated::moment));
        List<Dated> alike = alike(dated, leftOut);
        if (alike.size() < 2) {
            throw new UnusableInputException(
                    Stream.concat(Stream.of(SAID.say("too-few-alike")), leftOut.stream())
                            .collect(Collectors.joining(" ")));
        }
        Instant first = alike.get(0).moment();
        Double servicedDays =
                serviced == null
                        ? null
                        : Duration.between(first, serviced).toSeconds() / SECONDS_A_DAY;
        return new History(
                FORMAT,
                VERSION,
                alike.stream().map(d -> d.results().session()).toList(),
                alike.stream().map(d -> d.daysSince(first)).toList(),
                servicedDays,
                leftOut,
                courses(alike, first, servicedDays));
    }

    private static List<Dated> alike(List<Dated> dated, List<String> leftOut) {
        List<Dated> alike = new ArrayList<>();
        for (Dated d : dated) {
            Session latest = dated.get(dated.size() - 1).results().session();
            try {
                Conditions.requireAlike(d.results().session(), latest);
                alike.add(d);
            } catch (UnusableInputException e) {
                leftOut.add(SAID.say("left-out", d.moment()) + " " + e.getMessage());
            }
        }
        return alike;
    }

    private static List<Course> courses(List<Dated> alike, Instant first, Double servicedDays) {
        List<List<Headline>> headlines = alike.stream().map(d -> Headline.of(d.results())).toList();
        List<Course> courses = new ArrayList<>();
        for (int h = 0; h < headlines.get(0).size(); h++) {
            Headline headline = headlines.get(0).get(h);
            for (int c = 0; c < headline.figures().size(); c++) {
                List<Course.Point> points = new ArrayList<>();
                for (int i = 0; i < alike.size(); i++) {
                    points.add(
                            new Course.Point(
                                    alike.get(i).daysSince(first),
                                    headlines.get(i).get(h).figures().get(c)));
                }
                List<Course.Point> counted =
                        points.stream()
                                .filter(p -> p.figure().isKnown())
                                .filter(p -> servicedDays == null || p.days() >= servicedDays)
                                .toList();
                courses.add(
                        new Course(
                                headline.name(),
                                headline.isPerChannel() ? Find.CHANNELS.get(c) : null,
                                headline.signed(),
                                headline.aim(),
                                points,
                                Trend.of(counted, headline.aim())));
            }
        }
        return courses;
    }
}
