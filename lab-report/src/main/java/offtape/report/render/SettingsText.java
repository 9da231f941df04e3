package offtape.report.render;

import java.util.Locale;
import offtape.core.filter.EqualiserBand;
import offtape.core.filter.EqualiserBand.Kind;
import offtape.core.unit.Quantity;
import offtape.report.apply.correct.ChannelCorrection;
import offtape.report.apply.correct.Correction;
import offtape.report.apply.correct.EqualiserSettings;
import offtape.report.apply.correct.FilterFile;
import offtape.report.apply.correct.Headroom;
import offtape.report.apply.correct.NoiseChange;
import offtape.report.apply.level.OperatingLevels;
import offtape.report.apply.level.PairLevel;

/** What a person dials in, as plain text. */
final class SettingsText {

    private final Correction correction;
    private final StringBuilder out = new StringBuilder();

    private SettingsText(Correction correction) {
        this.correction = correction;
    }

    static String of(Correction correction) {
        return new SettingsText(correction).text();
    }

    private String text() {
        text("Settings for " + Words.machine(correction.session()));
        text(Words.description(correction.session()));
        text("");
        text("Use one of the two ways, not both: before the tape, or after it.");
        before();
        after();
        equaliser();
        levels();
        if (!correction.notes().isEmpty()) {
            heading("Mind");
            correction.notes().forEach(this::text);
        }
        return out.toString();
    }

    private void before() {
        heading("1. Before the tape (less hiss)");
        for (FilterFile f : correction.filters()) {
            line(
                    "Sessions at %d Hz: load %s as an impulse response, fully wet, no normalising,",
                    f.sampleRateHz(), f.beforeTape());
            line("  on what is sent to the machine; it adds no delay.");
            line(
                    "  Turn the programme down by %.1f dB ahead of it (a steady tone of full scale then"
                            + " stays",
                    f.peakGainDb());
            line("  within full scale; %.1f dB is enough for any sound whatever).", f.boundDb());
        }
        for (Headroom h : correction.headroom()) {
            if (h.highsBelowDbfs().isKnown()) {
                line(
                        "%s: keep the programme's peaks at %s under %+.1f dBFS ahead of the filter, or"
                                + " the tape takes",
                        name(h.channel()), hertz(h.frequencyHz()), h.highsBelowDbfs().value());
                line("  more than 1 dB off them.");
            } else {
                line(
                        "%s: how much of the highs the tape takes is not known. %s",
                        name(h.channel()), h.highsBelowDbfs().reason());
            }
        }
    }

    private void after() {
        heading("2. After the tape (more hiss, but the highs cannot overload the tape)");
        for (FilterFile f : correction.filters()) {
            line(
                    "Sessions at %d Hz: load %s as an impulse response, fully wet, no normalising,",
                    f.sampleRateHz(), f.afterTape());
            line("  on what comes back from the machine.");
        }
        for (NoiseChange n : correction.noise()) {
            line(
                    "%s: the hiss changes by %s, A-weighted, against the way before the tape.",
                    name(n.channel()), level(n.aWeighted()));
        }
    }

    private void equaliser() {
        heading("3. With an equaliser in place of the filter, either way");
        for (ChannelCorrection c : correction.channels()) {
            EqualiserSettings e = c.equaliser();
            line("%s:", name(c.channel()));
            if (e.bands().isEmpty()) {
                line("  nothing to set.");
            }
            for (EqualiserBand b : e.bands()) {
                line(
                        "  %-10s  %8s  %+5.1f dB  %s",
                        b.kind().words(),
                        hertz(b.frequencyHz()),
                        b.gainDb(),
                        b.kind() == Kind.PEAK ? "Q " + Numbers.significant(b.q(), 2) : "Q 0.71");
            }
            line("  %-10s  %8s  %+5.1f dB", "level", "", e.trimDb());
            line(
                    "  Off the filter by %.1f dB at most, %.1f dB rms, from %s to %s.",
                    e.worstDb(), e.rmsDb(), hertz(e.fromHz()), hertz(e.toHz()));
        }
        text(
                "Q of a peak is its frequency over the width at half of its gain in dB; a shelf has half");
        text("of its gain at its frequency. An equaliser that means something else by Q differs.");
    }

    private void levels() {
        heading("4. How hot to record (peaks of a steady tone near 1 kHz, both channels)");
        for (OperatingLevels o : correction.levels()) {
            line("%s:", Words.sentence(speed(o)));
            for (PairLevel p : o.pair()) {
                String what =
                        p.what().equals(PairLevel.K3)
                                ? Numbers.significant(p.value(), 3) + " % third harmonic"
                                : "1 dB compression";
                line(
                        "  %-22s %s",
                        what,
                        p.peaksDbfs().isKnown()
                                ? String.format(
                                        Locale.ROOT,
                                        "peaks at %+.1f dBFS (%+.1f dB re reference)",
                                        p.peaksDbfs().value(),
                                        p.recordLevel().value())
                                : "unknown: " + p.peaksDbfs().reason());
            }
        }
    }

    private static String speed(OperatingLevels o) {
        return (o.tapeSpeedMmPerS() == null
                        ? "tape speed not stated"
                        : "at " + Numbers.significant(o.tapeSpeedMmPerS() / 10, 4) + " cm/s")
                + (Words.isGiven(o.tape()) ? ", " + o.tape() : "");
    }

    private static String name(String channel) {
        return Words.sentence(channel);
    }

    private static String hertz(double hz) {
        return Numbers.frequency(hz).replace('\u00a0', ' ');
    }

    private static String level(Quantity q) {
        return q.isKnown()
                ? String.format(Locale.ROOT, "%+.1f dB", q.value())
                : "an unknown amount (" + q.reason() + ")";
    }

    private void heading(String text) {
        text("");
        text(text);
        text("-".repeat(text.length()));
    }

    private void line(String format, Object... arguments) {
        out.append(String.format(Locale.ROOT, format, arguments)).append('\n');
    }

    private void text(String text) {
        out.append(text).append('\n');
    }
}
