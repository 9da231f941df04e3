package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeResponse;
import offtape.report.result.TapeTone;

/** The reading of a calibration tape as lines for the terminal. */
final class TonesWords {

    private static final String NOTHING = "–";

    private TonesWords() {}

    static List<String> lines(TapeReading r) {
        List<String> lines = new ArrayList<>();
        lines.add(head(r));
        r.tones().forEach(t -> lines.add(row(r, t)));
        lines.add("");
        lines.add(
                String.format(
                        Locale.ROOT,
                        "%-22s %d of %d tones: %s",
                        "Series",
                        r.series().matched(),
                        r.tones().size(),
                        r.series().name()));
        lines.add(
                String.format(
                        Locale.ROOT,
                        "%-22s tone %d, %.0f Hz. %s",
                        "Reference",
                        r.reference().tone(),
                        r.reference().frequencyHz(),
                        r.reference().because()));
        lines.add(
                figure("Speed deviation", Figures::signedValue, r.speedDeviation())
                        + (r.speedFrom() == null ? "" : ". " + r.speedFrom()));
        if (r.speed() != null) {
            lines.add(
                    figure("Weighted, quasi-peak", Figures::value, r.speed().weightedPeak())
                            + ". Wow and flutter of tone "
                            + r.speedTone());
        }
        if (r.channels() > 1) {
            lines.add(figure("Right re left", Figures::signedValue, r.channelDifference()));
            lines.add(figure("Right late by", Figures::signedValue, r.interchannelDelay()));
            lines.add(figure("Azimuth", Figures::signedValue, r.azimuth()));
        }
        lines.addAll(response(r));
        r.notes().forEach(n -> lines.add("Note: " + n));
        return lines;
    }

    private static String head(TapeReading r) {
        boolean isPair = r.channels() > 1;
        return " No    from s      to s   nominal  heard Hz    off %"
                + (isPair ? "    left dBFS  right dBFS   R−L dB    late µs" : "         dBFS")
                + "   re ref dB";
    }

    private static String row(TapeReading r, TapeTone t) {
        StringBuilder row =
                new StringBuilder(
                        String.format(
                                Locale.ROOT,
                                "%3d %9.1f %9.1f %9s %9.2f %8s",
                                t.number(),
                                t.fromSeconds(),
                                t.toSeconds(),
                                t.nominalHz() == null ? NOTHING : hertz(t.nominalHz()),
                                t.frequency().value(),
                                cell(Figures::signedValue, t.deviation())));
        t.levels().forEach(l -> row.append(pad(cell(Figures::value, l.level()), 12)));
        if (r.channels() > 1) {
            row.append(pad(cell(Figures::signedValue, t.channelDifference()), 10));
            row.append(pad(cell(Figures::signedValue, t.interchannelDelay()), 11));
        }
        String relative =
                t.levels().stream()
                        .map(l -> cell(Figures::signedValue, l.relativeLevel()))
                        .reduce((a, b) -> a + " / " + b)
                        .orElse(NOTHING);
        return row.append("   ").append(relative).toString();
    }

    private static List<String> response(TapeReading r) {
        List<String> lines = new ArrayList<>();
        if (r.response().isEmpty()) {
            return lines;
        }
        lines.add("");
        lines.add(
                String.format(
                        Locale.ROOT,
                        "Response re tone %d (%.0f Hz), dB",
                        r.responseZero().tone(),
                        r.responseZero().frequencyHz()));
        for (TapeResponse curve : r.response()) {
            for (int i = 0; i < curve.frequencyHz().length; i++) {
                String corrected =
                        curve.correctedDb() == null
                                ? ""
                                : Figures.text("   corrected %+.2f", curve.correctedDb()[i]);
                lines.add(
                        String.format(
                                Locale.ROOT,
                                "  %-6s %8s Hz   %s%s",
                                curve.channel(),
                                hertz(curve.frequencyHz()[i]),
                                read(curve, i),
                                corrected));
            }
        }
        lines.add("");
        return lines;
    }

    private static String read(TapeResponse curve, int i) {
        Quantity level = Quantity.known(curve.asReadDb()[i], "dB", curve.uncertaintyDb()[i]);
        return Figures.signedValue(level) + " " + Figures.uncertainty(level);
    }

    /** A frequency with one decimal where it has one. */
    private static String hertz(double hz) {
        return Figures.text("%.1f", hz).replaceAll("\\.0$", "");
    }

    private static String cell(Function<Quantity, String> number, Quantity q) {
        return q.isKnown() ? number.apply(q) : NOTHING;
    }

    private static String pad(String text, int width) {
        return String.format(Locale.ROOT, "%" + width + "s", text);
    }

    private static String figure(String what, Function<Quantity, String> number, Quantity q) {
        String text =
                q.isKnown()
                        ? number.apply(q) + " " + Figures.uncertainty(q) + " " + q.unit()
                        : "unknown: " + q.reason();
        return String.format(Locale.ROOT, "%-22s %s", what, text);
    }
}
