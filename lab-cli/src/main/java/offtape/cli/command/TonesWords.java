package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Quantity;
import offtape.report.result.TapeReading;
import offtape.report.result.TapeResponse;
import offtape.report.result.TapeTone;

/** The reading of a calibration tape as lines for the terminal. */
final class TonesWords {

    private static final String NOTHING = "–";

    private final Speech speech;

    /** The words spoken on a terminal. */
    TonesWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    List<String> lines(TapeReading r) {
        List<String> lines = new ArrayList<>();
        lines.add(" " + speech.say(r.channels() > 1 ? "tones.head-pair" : "tones.head-one"));
        r.tones().forEach(t -> lines.add(row(r, t)));
        lines.add("");
        lines.add(
                speech.say(
                        "tones.series",
                        r.series().matched(),
                        r.tones().size(),
                        speech.told(r.series().name())));
        lines.add(
                speech.say(
                        "tones.reference",
                        r.reference().tone(),
                        r.reference().frequencyHz(),
                        speech.told(r.reference().because())));
        String deviation = figure("tones.deviation", speech::signedValue, r.speedDeviation());
        lines.add(
                r.speedFrom() == null
                        ? deviation
                        : speech.say("tones.from", deviation, speech.told(r.speedFrom())));
        if (r.speed() != null) {
            lines.add(
                    speech.say(
                            "tones.flutter-of",
                            figure("tones.weighted", speech::value, r.speed().weightedPeak()),
                            r.speedTone()));
        }
        if (r.channels() > 1) {
            lines.add(figure("tones.difference", speech::signedValue, r.channelDifference()));
            lines.add(figure("tones.late", speech::signedValue, r.interchannelDelay()));
            lines.add(figure("tones.azimuth", speech::signedValue, r.azimuth()));
        }
        lines.addAll(response(r));
        r.notes().forEach(n -> lines.add(speech.say("tones.note", speech.told(n))));
        return lines;
    }

    private String row(TapeReading r, TapeTone t) {
        StringBuilder row =
                new StringBuilder(
                        speech.plain(
                                String.format(
                                        Locale.ROOT,
                                        "%3d %9.1f %9.1f %9s %9.2f %8s",
                                        t.number(),
                                        t.fromSeconds(),
                                        t.toSeconds(),
                                        t.nominalHz() == null ? NOTHING : hertz(t.nominalHz()),
                                        t.frequency().value(),
                                        cell(speech::signedValue, t.deviation()))));
        t.levels().forEach(l -> row.append(pad(cell(speech::value, l.level()), 12)));
        if (r.channels() > 1) {
            row.append(pad(cell(speech::signedValue, t.channelDifference()), 10));
            row.append(pad(cell(speech::signedValue, t.interchannelDelay()), 11));
        }
        String relative =
                t.levels().stream()
                        .map(l -> cell(speech::signedValue, l.relativeLevel()))
                        .reduce((a, b) -> a + " / " + b)
                        .orElse(NOTHING);
        return row.append("   ").append(relative).toString();
    }

    private List<String> response(TapeReading r) {
        List<String> lines = new ArrayList<>();
        if (r.response().isEmpty()) {
            return lines;
        }
        lines.add("");
        lines.add(
                speech.say(
                        "tones.response", r.responseZero().tone(), r.responseZero().frequencyHz()));
        for (TapeResponse curve : r.response()) {
            for (int i = 0; i < curve.frequencyHz().length; i++) {
                String line =
                        "  "
                                + speech.say(
                                        "tones.point",
                                        speech.told(curve.channel()),
                                        hertz(curve.frequencyHz()[i]),
                                        read(curve, i));
                lines.add(
                        curve.correctedDb() == null
                                ? line
                                : speech.say(
                                        "tones.corrected",
                                        line,
                                        speech.fixed("%+.2f", curve.correctedDb()[i])));
            }
        }
        lines.add("");
        return lines;
    }

    private String read(TapeResponse curve, int i) {
        Quantity level = Quantity.known(curve.asReadDb()[i], "dB", curve.uncertaintyDb()[i]);
        return speech.signedValue(level) + " " + speech.uncertainty(level);
    }

    /** A frequency with one decimal where it has one. */
    private String hertz(double hz) {
        return speech.fixed("%.1f", hz).replaceAll("[.,]0$", "");
    }

    private static String cell(Function<Quantity, String> number, Quantity q) {
        return q.isKnown() ? number.apply(q) : NOTHING;
    }

    private static String pad(String text, int width) {
        return String.format(Locale.ROOT, "%" + width + "s", text);
    }

    private String figure(String what, Function<Quantity, String> number, Quantity q) {
        String text =
                q.isKnown()
                        ? number.apply(q) + " " + speech.uncertainty(q) + " " + q.unit()
                        : speech.unknown(q);
        return speech.say("tones.figure", speech.say(what), text);
    }
}
