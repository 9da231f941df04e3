package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedFloors;
import offtape.report.result.WorstTenSeconds;

/** All readings of speed as lines for the terminal. */
final class SpeedWords {

    private static final int MOST_COMPONENTS = 6;

    /** What noise alone reads is told from here on, percent. */
    private static final double LEAST_FLOOR = 1e-5;

    private final Speech speech;

    /** The words spoken on a terminal. */
    SpeedWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    List<String> lines(Speed s) {
        List<String> lines = new ArrayList<>();
        lines.add(
                speech.say(
                        "speed.tone",
                        s.toneFrequencyHz(),
                        span(s.seconds()),
                        span(s.fromSeconds())));
        SpeedFloors floor = s.floors();
        lines.add(line("speed.deviation", speech::signedValue, s.deviation(), null));
        lines.add(line("speed.drift", s.drift(), null));
        lines.add(line("speed.weighted-peak", s.weightedPeak(), floor.weightedPeak()));
        lines.add(line("speed.weighted-two-sigma", s.weightedTwoSigma(), floor.weightedTwoSigma()));
        lines.add(line("speed.weighted-rms", s.weightedRms(), floor.weightedRms()));
        lines.add(line("speed.american-rms", s.americanRms(), floor.americanRms()));
        lines.add(line("speed.unweighted-peak", s.unweightedPeak(), floor.unweightedPeak()));
        lines.add(line("speed.unweighted-rms", s.unweightedRms(), floor.unweightedRms()));
        lines.add(line("speed.wow", s.wowRms(), floor.wowRms()));
        lines.add(line("speed.flutter", s.flutterRms(), floor.flutterRms()));
        if (s.scrapeFlutter() != null) {
            lines.add(line("speed.scrape-flutter", s.scrapeFlutter(), floor.scrapeFlutter()));
        }
        lines.addAll(worst(s));
        s.components().stream().limit(MOST_COMPONENTS).forEach(c -> lines.add(component(c)));
        s.notes().forEach(n -> lines.add(speech.say("speed.note", speech.told(n))));
        return lines;
    }

    private List<String> worst(Speed s) {
        WorstTenSeconds worst = s.worstTenSeconds();
        return worst == null
                ? List.of()
                : List.of(
                        speech.say(
                                "speed.worst-line",
                                line("speed.worst", worst.weightedPeak(), null),
                                span(s.fromSeconds() + worst.fromSeconds())));
    }

    private String span(double seconds) {
        if (seconds < 120) {
            return speech.plain(String.format(Locale.ROOT, "%.1f s", seconds));
        }
        long whole = Math.round(seconds);
        return whole < 3600
                ? String.format(Locale.ROOT, "%d min %02d s", whole / 60, whole % 60)
                : String.format(
                        Locale.ROOT,
                        "%d h %02d min %02d s",
                        whole / 3600,
                        whole / 60 % 60,
                        whole % 60);
    }

    private String component(SpeedComponent c) {
        String line =
                speech.say(
                        "speed.component",
                        speech.number(c.frequencyHz(), c.frequencyUncertaintyHz()),
                        reading(speech::value, peak(c)));
        String moving =
                c.moves()
                        ? speech.say(
                                "speed.moving",
                                line,
                                speech.number(c.endFrequencyHz(), c.frequencyUncertaintyHz()))
                        : line;
        return c.part() == null ? moving : speech.say("speed.part", moving, speech.told(c.part()));
    }

    private static Quantity peak(SpeedComponent c) {
        return Quantity.known(c.peakPercent(), "%", c.peakUncertaintyPercent());
    }

    private String reading(Function<Quantity, String> number, Quantity q) {
        return number.apply(q) + " % " + speech.uncertainty(q);
    }

    private String floor(double percent) {
        return percent < LEAST_FLOOR
                ? speech.say("speed.under", speech.significant(LEAST_FLOOR, 1))
                : speech.significant(percent, 2);
    }

    private String line(String what, Quantity q, Double floor) {
        return line(what, speech::value, q, floor);
    }

    /**
     * A reading.
     *
     * @param what the key of its name
     * @param floor what noise alone would read, percent, or null
     */
    private String line(String what, Function<Quantity, String> number, Quantity q, Double floor) {
        String name = speech.say(what);
        if (!q.isKnown()) {
            return speech.say("speed.line", name, speech.unknown(q));
        }
        String text = reading(number, q);
        return floor == null
                ? speech.say("speed.line", name, text)
                : speech.say("speed.line-floor", name, text, floor(floor));
    }
}
