package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.filter.EqualiserBand;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.FilterFile;
import offtape.report.apply.correct.Verification;

/**
 * The filter, what it achieves, and the same on an equaliser.
 *
 * @param words of the reader
 */
record CorrectionFilterSection(Wording words) {

    /** Response before and after. */
    Section response(Correction c) {
        String caption = c.channels().stream().map(this::met).collect(Collectors.joining(" "));
        Markup body = Section.paragraph(words, words.say("correction.response"));
        Chart chart = new CorrectionCharts(words).response(c, caption);
        body.add(Section.figure(words, caption, List.of(chart)));
        body.add(ChartTable.of(words, chart).folded(words));
        body.add(reach(c).open());
        if (c.verification() != null) {
            body.add(tried(c.verification()).open());
        }
        return new Section("response", words.say("correction.response-heading"), body);
    }

    private String met(ChannelCorrection c) {
        return words.say(
                "correction.met",
                channel(c.channel()),
                words.frequency(c.metFromHz()),
                words.frequency(c.metToHz()));
    }

    private DataTable reach(Correction c) {
        return new DataTable(
                words.say("correction.reach"),
                List.of(
                        words.say("correction.channel"),
                        words.say("correction.reach-within"),
                        words.say("correction.reach-held-back"),
                        words.say("correction.reach-most-boost")),
                c.channels().stream()
                        .map(
                                x ->
                                        List.of(
                                                channel(x.channel()),
                                                band(x.metFromHz(), x.metToHz()),
                                                limited(x),
                                                words.say(
                                                        "correction.at",
                                                        words.level(x.mostGainDb()),
                                                        words.frequency(x.mostGainHz()))))
                        .toList());
    }

    private String limited(ChannelCorrection c) {
        if (c.limited().isEmpty()) {
            return DataTable.NOTHING;
        }
        return words.list(c.limited().stream().map(s -> band(s.fromHz(), s.toHz())).toList());
    }

    private DataTable tried(Verification v) {
        return new DataTable(
                words.say("correction.tried", v.machine()),
                List.of(
                        words.say("correction.channel"),
                        words.say("correction.tried-band"),
                        words.say("correction.tried-worst"),
                        words.say("correction.tried-rms"),
                        words.say("correction.tried-after-tape"),
                        words.say("correction.tried-hiss-said"),
                        words.say("correction.tried-hiss-measured")),
                v.channels().stream()
                        .map(
                                x ->
                                        List.of(
                                                channel(x.channel()),
                                                band(x.fromHz(), x.toHz()),
                                                db(x.worstDb()),
                                                db(x.rmsDb()),
                                                db(x.worstAfterTapeDb()),
                                                words.full(x.noisePredicted(), true),
                                                words.full(x.noiseMeasured(), true)))
                        .toList());
    }

    /** The filter and the equaliser. */
    Section filter(Correction c) {
        String caption = words.say("correction.filter-caption");
        Markup body = Section.paragraph(words, words.say("correction.filter"));
        Chart chart = new CorrectionCharts(words).filter(c, caption);
        body.add(Section.figure(words, caption, List.of(chart)));
        body.add(ChartTable.of(words, chart).folded(words));
        body.add(files(c).open());
        body.add(bands(c).open());
        body.add(Section.paragraph(words, words.say("correction.filter-q")));
        return new Section("filter", words.say("correction.filter-heading"), body);
    }

    private DataTable files(Correction c) {
        List<List<String>> rows = new ArrayList<>();
        for (FilterFile f : c.filters()) {
            for (FilterFile.Channel x : f.channels()) {
                rows.add(
                        List.of(
                                words.say(
                                        "correction.file-row",
                                        f.sampleRateHz(),
                                        words.channel(x.channel())),
                                Integer.toString(f.taps()),
                                words.say(
                                        "correction.at",
                                        db(x.error().worstDb()),
                                        words.frequency(x.error().worstHz())),
                                db(x.peakGainDb()),
                                db(x.boundDb())));
            }
        }
        return new DataTable(
                words.say("correction.files"),
                List.of(
                        words.say("correction.files-rate"),
                        words.say("correction.files-samples"),
                        words.say("correction.files-error"),
                        words.say("correction.files-steady"),
                        words.say("correction.files-any")),
                rows);
    }

    private DataTable bands(Correction c) {
        List<List<String>> rows = new ArrayList<>();
        for (ChannelCorrection x : c.channels()) {
            String name = channel(x.channel());
            for (EqualiserBand b : x.equaliser().bands()) {
                rows.add(
                        List.of(
                                words.say("correction.bands-row", name, kind(words, b)),
                                words.frequency(b.frequencyHz()),
                                words.level(b.gainDb()),
                                words.significant(b.q(), 2)));
            }
            rows.add(
                    List.of(
                            words.say("correction.bands-level", name),
                            DataTable.NOTHING,
                            words.level(x.equaliser().trimDb()),
                            DataTable.NOTHING));
            rows.add(
                    List.of(
                            words.say("correction.bands-off", name),
                            band(x.equaliser().fromHz(), x.equaliser().toHz()),
                            words.say(
                                    "correction.bands-off-by",
                                    db(x.equaliser().worstDb()),
                                    db(x.equaliser().rmsDb())),
                            DataTable.NOTHING));
        }
        return new DataTable(
                words.say("correction.bands"),
                List.of(
                        words.say("correction.bands-channel"),
                        words.say("correction.bands-frequency"),
                        words.say("correction.bands-gain"),
                        words.say("correction.bands-q")),
                rows);
    }

    /** What kind of band it is: {@code low shelf}. */
    static String kind(Wording words, EqualiserBand band) {
        return words.say(
                switch (band.kind()) {
                    case LOW_SHELF -> "correction.kind-low-shelf";
                    case PEAK -> "correction.kind-peak";
                    case HIGH_SHELF -> "correction.kind-high-shelf";
                });
    }

    private String channel(String name) {
        return words.sentence(words.channel(name));
    }

    private String band(double fromHz, double toHz) {
        return words.say("correction.from-to", words.frequency(fromHz), words.frequency(toHz));
    }

    private String db(double value) {
        return words.number(Numbers.withUnit(Numbers.decimal(value, 2), "dB"));
    }
}
