package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/**
 * The figures of each view.
 *
 * @param wording how it is said
 */
record PictureTable(Wording wording) {

    private static final String NOTHING = "-";
    private static final double SILENT_DBFS = -199;
    private static final double LEAST_PERCENT = 0.001;

    List<String> of(Readings r, int width) {
        List<String> lines = new ArrayList<>();
        int channels = r.peaks().size();
        lines.add(Columns.row("", channels, wording::channel, ""));
        if (r.desk().view() != View.AZIMUTH) {
            tone(r, channels, lines);
        }
        lines.add(
                Columns.row(
                        wording.say("lineup.highest"),
                        channels,
                        c -> highest(r.peaks().get(c)),
                        ""));
        switch (r.desk().view()) {
            case GAINS -> gains(r, channels, width, lines);
            case AZIMUTH -> azimuth(r, lines);
            case BIAS ->
                    lines.add(
                            Columns.row(
                                    wording.say("lineup.below-maximum"),
                                    channels,
                                    c ->
                                            c < r.bias().size()
                                                    ? wording.of(r.bias().get(c).belowDb(), 2)
                                                            + " dB"
                                                    : NOTHING,
                                    ""));
            case TAPE -> tape(r, lines);
        }
        return lines;
    }

    private void tone(Readings r, int channels, List<String> lines) {
        boolean tape = r.desk().view() == View.TAPE;
        double against = tape ? r.desk().limits().targetDbfs() : r.desk().levelDbfs();
        lines.add(
                Columns.row(
                        wording.say("lineup.return"),
                        channels,
                        c -> level(r, c, against, " dB"),
                        wording.say(tape ? "lineup.re-target" : "lineup.re-sent")));
        lines.add(Columns.row("", channels, c -> level(r, c, 0, " dBFS"), ""));
        if (channels == 2) {
            lines.add(Columns.line(wording.say("lineup.right-less-left"), difference(r)));
        }
    }

    private String highest(Peak peak) {
        if (peak.clipped()) {
            return wording.say("lineup.clips");
        }
        return peak.dbfs() <= SILENT_DBFS
                ? wording.say("lineup.silent")
                : wording.of(peak.dbfs(), 1) + " dBFS";
    }

    private String level(Readings r, int c, double against, String unit) {
        if (c >= r.tones().size()) {
            return NOTHING;
        }
        if (!r.tones().get(c).isTone()) {
            return against == 0 ? NOTHING : wording.say("lineup.no-tone");
        }
        double level = r.tones().get(c).levelDbfs() - against;
        return (against == 0 ? wording.of(level, 2) : wording.signed(level, 2)) + unit;
    }

    private String difference(Readings r) {
        return r.rightLessLeftDb() == null
                ? NOTHING
                : wording.signed(r.rightLessLeftDb(), 2) + " dB";
    }

    private void gains(Readings r, int channels, int width, List<String> lines) {
        lines.add(Columns.row("K3", channels, c -> k3(r, c), ""));
        double reference = r.desk().limits().referenceDbfs();
        lines.add(
                Columns.row(
                        wording.say("lineup.noise"),
                        channels,
                        c ->
                                c < r.noise().size()
                                        ? noise(r.noise().get(c).unweightedDbfs(), reference)
                                        : NOTHING,
                        wording.say("lineup.re-reference")));
        lines.add(
                Columns.row(
                        "  " + wording.say("lineup.a-weighted"),
                        channels,
                        c ->
                                c < r.noise().size()
                                        ? noise(r.noise().get(c).aWeightedDbfs(), reference)
                                        : NOTHING,
                        ""));
        lines.addAll(
                Columns.wrap(
                        Columns.line(wording.say("lineup.delay"), ""),
                        new DelayWords(wording).of(r.delay()),
                        width));
    }

    /** A path without any noise reads as silence. */
    String noise(double dbfs, double reference) {
        return dbfs <= SILENT_DBFS
                ? wording.say("lineup.silent")
                : wording.of(dbfs - reference, 1) + " dB";
    }

    String k3(Readings r, int c) {
        if (c >= r.tones().size() || !r.tones().get(c).isTone()) {
            return NOTHING;
        }
        ToneReading t = r.tones().get(c);
        if (t.k3Percent() != null) {
            return t.k3Percent() < LEAST_PERCENT
                    ? wording.say("lineup.k3-below", places(LEAST_PERCENT))
                    : places(t.k3Percent()) + " %";
        }
        return t.k3BelowPercent() == null
                ? wording.say("lineup.beyond-band")
                : wording.say(
                        "lineup.k3-below", places(Math.max(LEAST_PERCENT, t.k3BelowPercent())));
    }

    private String places(double percent) {
        return wording.of(percent, percent < 0.1 ? 3 : 2);
    }

    private void azimuth(Readings r, List<String> lines) {
        PairReading p = r.pair();
        boolean known = p != null && p.kind() != PairReading.Kind.UNRELATED;
        String delay = NOTHING;
        if (known) {
            String late = wording.signed(p.delayMicroseconds(), 1);
            delay =
                    p.kind() == PairReading.Kind.DELAY
                            ? wording.say(
                                    "lineup.plus-minus",
                                    late,
                                    wording.of(Math.max(0.1, p.plusMinusMicroseconds()), 1))
                            : wording.say(
                                    "lineup.plus-minus-periods",
                                    late,
                                    wording.of(p.periodMicroseconds(), 1));
        }
        lines.add(Columns.line(wording.say("lineup.right-is-late"), delay));
        String mono = NOTHING;
        if (known && p.monoLossDb() != null) {
            String loss = wording.of(p.monoLossDb(), 2);
            mono =
                    r.azimuth().hasBest()
                            ? wording.say(
                                    "lineup.mono-best",
                                    loss,
                                    wording.of(r.azimuth().bestMonoDb(), 2))
                            : wording.say("lineup.mono", loss);
        }
        lines.add(Columns.line(wording.say("lineup.mono-sum"), mono));
    }

    private void tape(Readings r, List<String> lines) {
        lines.add(
                Columns.line(
                        wording.say("lineup.tone"),
                        r.tapeHz() == null ? NOTHING : wording.hertz(r.tapeHz())));
        lines.add(
                Columns.line(
                        wording.say("lineup.target"),
                        wording.of(r.desk().limits().targetDbfs(), 2) + " dBFS"));
    }
}
