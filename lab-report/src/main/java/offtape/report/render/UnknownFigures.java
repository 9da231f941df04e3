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

    private final Map<String, List<String>> byReason = new LinkedHashMap<>();

    private UnknownFigures() {}

    /** Reasons with the names of the figures they hold for, in the order of the report. */
    static Map<String, List<String>> of(Results results) {
        UnknownFigures unknown = new UnknownFigures();
        Headline.of(results).forEach(unknown::note);
        Speed speed = results.speed();
        if (speed != null) {
            unknown.note("Drift of the speed", speed.drift());
            unknown.note("Weighted two-sigma reading", speed.weightedTwoSigma());
            unknown.note("Wow", speed.wowRms());
            unknown.note("Flutter", speed.flutterRms());
            unknown.note("Scrape flutter", speed.scrapeFlutter());
        }
        Timing timing = results.timing();
        if (timing != null) {
            unknown.note("Delay of the return", timing.delay());
            unknown.note("Delay between the heads", timing.headDelay());
            unknown.note("Distance of the heads", timing.headSpacing());
            unknown.note("Error of the recording clock", timing.recordingClockError());
        }
        unknown.note("Azimuth", Find.channels(results).azimuth());
        unknown.note("Loss in mono at 10 kHz", Find.channels(results).monoLossAt10kHz());
        return unknown.byReason;
    }

    private void note(Headline headline) {
        List<Quantity> figures = headline.figures();
        boolean alike = figures.stream().distinct().count() == 1;
        for (int c = 0; c < figures.size(); c++) {
            String channel = alike ? "" : ", " + Find.CHANNELS.get(c);
            note(headline.name() + channel, figures.get(c));
        }
    }

    private void note(String name, Quantity figure) {
        if (figure != null && !figure.isKnown()) {
            List<String> names = byReason.computeIfAbsent(figure.reason(), r -> new ArrayList<>());
            if (!names.contains(name)) {
                names.add(name);
            }
        }
    }
}
