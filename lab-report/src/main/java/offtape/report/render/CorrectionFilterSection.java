package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.filter.EqualiserBand;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.FilterFile;
import offtape.report.apply.correct.Stretch;
import offtape.report.apply.correct.Verification;

/** The filter, what it achieves, and the same on an equaliser. */
final class CorrectionFilterSection {

    private CorrectionFilterSection() {}

    /** Response before and after. */
    static Section response(Correction c) {
        String caption = c.channels().stream().map(CorrectionFilterSection::met).collect(joined());
        Markup body =
                Section.paragraph(
                        "The return as it was measured, and as it is to be expected once the filter"
                                + " is in the way.");
        Chart chart = CorrectionCharts.response(c, caption);
        body.add(Section.figure(caption, List.of(chart)));
        body.add(ChartTable.of(chart).folded());
        body.add(reach(c).open());
        if (c.verification() != null) {
            body.add(tried(c.verification()).open());
        }
        return new Section("response", "Response before and after", body);
    }

    static String met(ChannelCorrection c) {
        return Words.sentence(c.channel())
                + " keeps within 0.5 dB of the target from "
                + Numbers.frequency(c.metFromHz())
                + " to "
                + Numbers.frequency(c.metToHz())
                + ".";
    }

    private static java.util.stream.Collector<CharSequence, ?, String> joined() {
        return Collectors.joining(" ");
    }

    private static DataTable reach(Correction c) {
        return new DataTable(
                "How far the correction reaches",
                List.of(
                        "Channel",
                        "Within 0.5 dB of the target",
                        "Held back by more than 0.5 dB",
                        "Most boost"),
                c.channels().stream()
                        .map(
                                x ->
                                        List.of(
                                                Words.sentence(x.channel()),
                                                Numbers.frequency(x.metFromHz())
                                                        + " to "
                                                        + Numbers.frequency(x.metToHz()),
                                                limited(x),
                                                Numbers.level(x.mostGainDb())
                                                        + " at "
                                                        + Numbers.frequency(x.mostGainHz())))
                        .toList());
    }

    static String limited(ChannelCorrection c) {
        if (c.limited().isEmpty()) {
            return DataTable.NOTHING;
        }
        List<String> parts = new ArrayList<>();
        for (Stretch s : c.limited()) {
            parts.add(Numbers.frequency(s.fromHz()) + " to " + Numbers.frequency(s.toHz()));
        }
        return Words.list(parts);
    }

    private static DataTable tried(Verification v) {
        return new DataTable(
                "Tried on the simulated machine " + v.machine(),
                List.of(
                        "Channel",
                        "Band",
                        "Off target, at most",
                        "rms",
                        "Filter after the tape, at most",
                        "More hiss after the tape, A: said",
                        "measured"),
                v.channels().stream()
                        .map(
                                x ->
                                        List.of(
                                                Words.sentence(x.channel()),
                                                Numbers.frequency(x.fromHz())
                                                        + " to "
                                                        + Numbers.frequency(x.toHz()),
                                                db(x.worstDb()),
                                                db(x.rmsDb()),
                                                db(x.worstAfterTapeDb()),
                                                Numbers.full(x.noisePredicted(), true),
                                                Numbers.full(x.noiseMeasured(), true)))
                        .toList());
    }

    private static String db(double value) {
        return Numbers.withUnit(Numbers.decimal(value, 2), "dB");
    }

    /** The filter and the equaliser. */
    static Section filter(Correction c) {
        String caption =
                "The filter's gain, unity at 1 kHz, and that of the equaliser bands which come"
                        + " nearest to it.";
        Markup body =
                Section.paragraph(
                        "A filter of minimum phase: it adds no delay. The same file serves either"
                                + " way, before the tape or after it; use one.");
        Chart chart = CorrectionCharts.filter(c, caption);
        body.add(Section.figure(caption, List.of(chart)));
        body.add(ChartTable.of(chart).folded());
        body.add(files(c).open());
        body.add(bands(c).open());
        body.add(
                Section.paragraph(
                        "Q of a peak is its frequency over the width at half of its gain in dB; a"
                                + " shelf has half of its gain at its frequency and a Q of 0.71. An"
                                + " equaliser whose numbers mean something else, or which bends near"
                                + " half the sample rate, comes out a little differently."));
        return new Section("filter", "Filter and equaliser", body);
    }

    private static DataTable files(Correction c) {
        List<List<String>> rows = new ArrayList<>();
        for (FilterFile f : c.filters()) {
            for (FilterFile.Channel x : f.channels()) {
                rows.add(
                        List.of(
                                f.sampleRateHz() + " Hz, " + x.channel(),
                                Integer.toString(f.taps()),
                                db(x.error().worstDb())
                                        + " at "
                                        + Numbers.frequency(x.error().worstHz()),
                                db(x.peakGainDb()),
                                db(x.boundDb())));
            }
        }
        return new DataTable(
                "The filter files, as written",
                List.of(
                        "Rate, channel",
                        "Samples",
                        "Off the wanted gain, at most",
                        "Programme lower by, steady tones",
                        "Any sound"),
                rows);
    }

    private static DataTable bands(Correction c) {
        List<List<String>> rows = new ArrayList<>();
        for (ChannelCorrection x : c.channels()) {
            String name = Words.sentence(x.channel());
            for (EqualiserBand b : x.equaliser().bands()) {
                rows.add(
                        List.of(
                                name + ", " + b.kind().words(),
                                Numbers.frequency(b.frequencyHz()),
                                Numbers.level(b.gainDb()),
                                Numbers.significant(b.q(), 2)));
            }
            rows.add(
                    List.of(
                            name + ", level",
                            DataTable.NOTHING,
                            Numbers.level(x.equaliser().trimDb()),
                            DataTable.NOTHING));
            rows.add(
                    List.of(
                            name + ", off the filter by",
                            Numbers.frequency(x.equaliser().fromHz())
                                    + " to "
                                    + Numbers.frequency(x.equaliser().toHz()),
                            db(x.equaliser().worstDb())
                                    + " at most, "
                                    + db(x.equaliser().rmsDb())
                                    + " rms",
                            DataTable.NOTHING));
        }
        return new DataTable(
                "Equaliser bands", List.of("Channel, band", "Frequency", "Gain", "Q"), rows);
    }
}
