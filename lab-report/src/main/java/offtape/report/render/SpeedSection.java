package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.headline.Find;
import offtape.report.result.Results;
import offtape.report.result.Speed;
import offtape.report.result.WorstTenSeconds;

/**
 * How fast the tape runs and how steadily.
 *
 * @param words in the reader's language
 */
record SpeedSection(Wording words) {

    /** The section. */
    Section of(Results results, LimitLines limits) {
        Markup body = Section.paragraph(words, words.say("speed.question"));
        Speed speed = results.speed();
        if (speed == null) {
            return section(body.add(Section.paragraph(words, words.say("speed.no-tone"))));
        }
        SpeedComponents lines = new SpeedComponents(words);
        if (speed.passes() != null) {
            body.add(Section.paragraph(words, words.told(speed.passes().statement())));
        }
        speed.notes().forEach(note -> body.add(Section.paragraph(words, words.told(note))));
        if (SpeedReadingsChart.isThere(speed)) {
            String caption = readingsCaption(speed);
            body.add(figure(caption, SpeedReadingsChart.of(words, speed, limits, caption)));
        }
        if (SpeedCharts.hasTrace(speed)) {
            String caption = traceCaption(speed);
            body.add(figure(caption, SpeedCharts.trace(words, speed, caption)));
        }
        if (SpeedCharts.hasSpectrum(speed)) {
            String caption = lines.caption(speed.components());
            Chart chart = SpeedCharts.spectrum(words, speed, caption);
            body.add(figure(caption, chart));
            body.add(ChartTable.of(words, chart).folded(words));
        }
        body.add(readings(speed).open());
        body.add(new SpeedPasses(words).of(speed));
        if (speed.transport() != null) {
            TransportPart.add(words, body, speed.transport());
        }
        body.add(lines.table(words.say("speed.lines"), speed.components()).folded(words));
        body.add(SpeedReadingsChart.table(words, speed).folded(words));
        body.add(SpeedCharts.traceTable(words, speed).folded(words));
        return section(body);
    }

    private Section section(Markup body) {
        return new Section("speed", words.say("speed.heading"), body);
    }

    private Markup figure(String caption, Chart chart) {
        return Section.figure(words, caption, List.of(chart));
    }

    private String traceCaption(Speed speed) {
        List<String> sentences = new ArrayList<>();
        Quantity deviation = Find.figure(speed.deviation());
        Quantity drift = Find.figure(speed.drift());
        sentences.add(words.say("speed.trace-caption"));
        if (deviation.isKnown()) {
            sentences.add(words.say("speed.trace-mean", words.full(deviation, true)));
        }
        if (drift.isKnown()) {
            sentences.add(words.say("speed.trace-drift", words.full(drift, false)));
        }
        return String.join(" ", sentences);
    }

    private String readingsCaption(Speed speed) {
        String what = words.say("speed.readings-caption");
        WorstTenSeconds worst = speed.worstTenSeconds();
        if (worst == null || !worst.weightedPeak().isKnown()) {
            return what;
        }
        return what
                + " "
                + words.say(
                        "speed.readings-worst",
                        words.decimal(worst.fromSeconds(), 1),
                        words.full(worst.weightedPeak(), false));
    }

    private DataTable readings(Speed speed) {
        SpeedTable table = new SpeedTable(words);
        return speed.transport() == null
                ? table.heard(speed)
                : table.both(speed, speed.transport());
    }
}
