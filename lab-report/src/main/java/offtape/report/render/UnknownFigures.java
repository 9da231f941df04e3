package offtape.report.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.headline.Headline;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.Timing;

/** The figures that a recording could not tell, gathered by the reason. */
final class UnknownFigures {

    private final Wording words;
    private final Map<String, List<String>> byReason = new LinkedHashMap<>();

    private UnknownFigures(Wording words) {
        this.words = words;
    }

    /** Reasons with the names of the figures they hold for, in the order of the report. */
    static Map<String, List<String>> of(Wording words, Results results) {
        UnknownFigures unknown = new UnknownFigures(words);
        Headline.of(results).forEach(unknown::note);
        Speed speed = results.speed();
        if (speed != null) {
            unknown.note(words.say("session.unknown-drift"), speed.drift());
            unknown.note(words.say("session.unknown-two-sigma"), speed.weightedTwoSigma());
            unknown.note(words.say("session.unknown-wow"), speed.wowRms());
            unknown.note(words.say("session.unknown-flutter"), speed.flutterRms());
            unknown.note(words.say("session.unknown-scrape"), speed.scrapeFlutter());
        }
        Timing timing = results.timing();
        if (timing != null) {
            unknown.note(words.say("session.unknown-delay"), timing.delay());
            unknown.note(words.say("session.unknown-head-delay"), timing.headDelay());
            unknown.note(words.say("session.unknown-head-spacing"), timing.headSpacing());
            unknown.note(words.say("session.unknown-clock"), timing.recordingClockError());
        }
        unknown.note(words.say("session.unknown-azimuth"), Find.channels(results).azimuth());
        unknown.note(words.say("session.unknown-mono"), Find.channels(results).monoLossAt10kHz());
        return unknown.byReason;
    }

    private void note(Headline headline) {
        List<Quantity> figures = headline.figures();
        boolean alike = figures.stream().distinct().count() == 1;
        for (int c = 0; c < figures.size(); c++) {
            String channel = alike ? "" : ", " + words.channel(Find.CHANNELS.get(c));
            note(words.told(headline.name()) + channel, figures.get(c));
        }
    }

    private void note(String name, Quantity figure) {
        if (figure != null && !figure.isKnown()) {
            List<String> names =
                    byReason.computeIfAbsent(words.told(figure.reason()), r -> new ArrayList<>());
            if (!names.contains(name)) {
                names.add(name);
            }
        }
    }
}
