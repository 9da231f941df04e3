package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/** The figures of each view. */
final class PictureTable {

    private static final String NOTHING = "-";
    private static final double SILENT_DBFS = -199;
    private static final double LEAST_PERCENT = 0.001;

    private PictureTable() {}

    static List<String> of(Readings r, int width) {
        List<String> lines = new ArrayList<>();
        int channels = r.peaks().size();
        lines.add(Columns.row("", channels, c -> c == 0 ? "left" : "right", ""));
        if (r.desk().view() != View.AZIMUTH) {
            tone(r, channels, lines);
        }
        lines.add(Columns.row("Highest", channels, c -> highest(r.peaks().get(c)), ""));
        switch (r.desk().view()) {
            case GAINS -> gains(r, channels, width, lines);
            case AZIMUTH -> azimuth(r, lines);
            case BIAS ->
                    lines.add(
                            Columns.row(
                                    "Below maximum",
                                    channels,
                                    c ->
                                            c < r.bias().size()
                                                    ? Decimals.of(r.bias().get(c).belowDb(), 2)
                                                            + " dB"
                                                    : NOTHING,
                                    ""));
            case TAPE -> tape(r, lines);
        }
        return lines;
    }

    private static void tone(Readings r, int channels, List<String> lines) {
        boolean tape = r.desk().view() == View.TAPE;
        double against = tape ? r.desk().limits().targetDbfs() : r.desk().levelDbfs();
        lines.add(
                Columns.row(
                        "Return",
                        channels,
                        c -> level(r, c, against, " dB"),
                        tape ? "re target" : "re sent"));
        lines.add(Columns.row("", channels, c -> level(r, c, 0, " dBFS"), ""));
        if (channels == 2) {
            lines.add(Columns.line("Right less left", difference(r)));
        }
    }

    private static String highest(Peak peak) {
        if (peak.clipped()) {
            return "CLIPS";
        }
        return peak.dbfs() <= SILENT_DBFS ? "silent" : Decimals.of(peak.dbfs(), 1) + " dBFS";
    }

    private static String level(Readings r, int c, double against, String unit) {
        if (c >= r.tones().size()) {
            return NOTHING;
        }
        if (!r.tones().get(c).isTone()) {
            return against == 0 ? NOTHING : "no tone";
        }
        double level = r.tones().get(c).levelDbfs() - against;
        return (against == 0 ? Decimals.of(level, 2) : Decimals.signed(level, 2)) + unit;
    }

    private static String difference(Readings r) {
        return r.rightLessLeftDb() == null
                ? NOTHING
                : Decimals.signed(r.rightLessLeftDb(), 2) + " dB";
    }

    private static void gains(Readings r, int channels, int width, List<String> lines) {
        lines.add(Columns.row("K3", channels, c -> k3(r, c), ""));
        double reference = r.desk().limits().referenceDbfs();
        lines.add(
                Columns.row(
                        "Noise",
                        channels,
                        c ->
                                c < r.noise().size()
                                        ? noise(r.noise().get(c).unweightedDbfs(), reference)
                                        : NOTHING,
                        "re reference"));
        lines.add(
                Columns.row(
                        "  A-weighted",
                        channels,
                        c ->
                                c < r.noise().size()
                                        ? noise(r.noise().get(c).aWeightedDbfs(), reference)
                                        : NOTHING,
                        ""));
        lines.addAll(Columns.wrap(Columns.line("Delay", ""), DelayWords.of(r.delay()), width));
    }

    /** A path without any noise reads as silence. */
    static String noise(double dbfs, double reference) {
        return dbfs <= SILENT_DBFS ? "silent" : Decimals.of(dbfs - reference, 1) + " dB";
    }

    static String k3(Readings r, int c) {
        if (c >= r.tones().size() || !r.tones().get(c).isTone()) {
            return NOTHING;
        }
        ToneReading t = r.tones().get(c);
        if (t.k3Percent() != null) {
            return t.k3Percent() < LEAST_PERCENT
                    ? "below " + places(LEAST_PERCENT) + " %"
                    : places(t.k3Percent()) + " %";
        }
        return t.k3BelowPercent() == null
                ? "beyond band"
                : "below " + places(Math.max(LEAST_PERCENT, t.k3BelowPercent())) + " %";
    }

    private static String places(double percent) {
        return Decimals.of(percent, percent < 0.1 ? 3 : 2);
    }

    private static void azimuth(Readings r, List<String> lines) {
        PairReading p = r.pair();
        boolean known = p != null && p.kind() != PairReading.Kind.UNRELATED;
        String delay = NOTHING;
        if (known) {
            delay =
                    Decimals.signed(p.delayMicroseconds(), 1)
                            + " µs"
                            + (p.kind() == PairReading.Kind.DELAY
                                    ? ", plus or minus "
                                            + Decimals.of(
                                                    Math.max(0.1, p.plusMinusMicroseconds()), 1)
                                    : " plus or minus whole periods of "
                                            + Decimals.of(p.periodMicroseconds(), 1));
        }
        lines.add(Columns.line("Right is late", delay));
        String mono = NOTHING;
        if (known && p.monoLossDb() != null) {
            mono = Decimals.of(p.monoLossDb(), 2) + " dB at 10 kHz";
            if (r.azimuth().hasBest()) {
                mono += ", best seen " + Decimals.of(r.azimuth().bestMonoDb(), 2) + " dB";
            }
        }
        lines.add(Columns.line("Mono sum", mono));
    }

    private static void tape(Readings r, List<String> lines) {
        lines.add(Columns.line("Tone", r.tapeHz() == null ? NOTHING : Decimals.hertz(r.tapeHz())));
        lines.add(Columns.line("Target", Decimals.of(r.desk().limits().targetDbfs(), 2) + " dBFS"));
    }
}
