package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.Decibels;
import offtape.core.unit.TapeSpeed;

/** A programme's content in words. */
final class ProgrammeWords {

    private ProgrammeWords() {}

    /** A line about the whole, then one a cue. */
    static List<String> of(CueSheet sheet, TapeSpeed speed) {
        List<String> lines = new ArrayList<>();
        double seconds = sheet.seconds(sheet.frames());
        lines.add(
                String.format(
                        Locale.ROOT,
                        "Programme for %s: %d min %02d s, %d Hz, 24 bit, reference tone at %.1f dBFS,"
                                + " loudest tone at %.1f dBFS.",
                        speed,
                        (int) seconds / 60,
                        (int) seconds % 60,
                        sheet.sampleRateHz(),
                        sheet.referenceDbfs(),
                        Decibels.ofAmplitude(new ProgrammeSignal(sheet).peak())));
        for (Cue cue : sheet.cues()) {
            lines.add(
                    String.format(
                            Locale.ROOT,
                            "  %6.1f s  %5.1f s  %-5s  %s",
                            sheet.seconds(cue.startFrame()),
                            sheet.seconds(cue.frames()),
                            cue.channels().key(),
                            content(cue)));
        }
        return lines;
    }

    private static String content(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return words("tone %s Hz, %+.0f dB", number(t.frequencyHz()), t.levelDb());
        }
        if (cue instanceof Cue.Sweep s) {
            return words(
                    "sweep %s to %s Hz, %+.0f dB",
                    number(s.startHz()), number(s.endHz()), s.levelDb());
        }
        if (cue instanceof Cue.Ladder l) {
            List<Cue.Step> steps = l.steps();
            return words(
                    "ladder of %s Hz, %d steps from %+.0f to %+.0f dB",
                    number(l.frequencyHz()),
                    steps.size(),
                    steps.get(0).levelDb(),
                    steps.get(steps.size() - 1).levelDb());
        }
        return cue instanceof Cue.Silence ? "silence" : "marker \"" + cue.id() + "\"";
    }

    private static String number(double hz) {
        return String.format(Locale.ROOT, "%.0f", hz);
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
