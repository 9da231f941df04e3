package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import offtape.cli.terminal.Terminal;

/** A preview in words. */
final class PreviewWords {

    private final Speech speech;

    /** The words spoken on a terminal. */
    PreviewWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** The figures. */
    List<String> lines(PreviewFigures f) {
        List<String> lines = new ArrayList<>();
        if (f.out() != null) {
            String parts =
                    f.parts().isEmpty() ? speech.say("preview.none") : parts(f.parts(), ", ");
            lines.add(
                    f.machineName() == null
                            ? speech.say("preview.session-machine", parts, f.seed())
                            : speech.say("preview.machine", f.machineName(), parts, f.seed()));
            levels(f, lines);
        }
        if (f.nulls() != null) {
            lines.add(speech.say("preview.null"));
            f.nulls().forEach(n -> lines.add(nullLine(n)));
        }
        return lines;
    }

    private void levels(PreviewFigures f, List<String> lines) {
        if (f.peakInDbfs() != null) {
            lines.add(
                    speech.say(
                            "preview.peak-in",
                            speech.fixed("%.1f", f.peakInDbfs()),
                            speech.fixed("%+.1f", f.peakSentDb()),
                            speech.fixed("%.1f", f.referenceDbfs())));
        }
        if (f.k3AtPeakPercent() != null) {
            lines.add(
                    speech.say(
                            "preview.k3",
                            speech.fixed("%.3g", f.k3AtPeakPercent()),
                            speech.fixed("%.2f", f.compressionAtPeakDb())));
        }
        if (f.peakOutDbfs() != null) {
            lines.add(
                    speech.say(
                            f.encoding().equals("pcm-24")
                                    ? "preview.peak-out"
                                    : "preview.peak-out-float",
                            speech.fixed("%.1f", f.peakOutDbfs())));
        }
    }

    private String nullLine(PreviewFigures.Null n) {
        return "  " + speech.say("preview.null-line", number(n.nullDb()), parts(n.parts(), " + "));
    }

    private String number(double db) {
        return speech.fixed("%6.1f", db);
    }

    private String parts(List<String> keys, String between) {
        return keys.stream()
                .map(key -> speech.say("preview.part-" + key))
                .collect(Collectors.joining(between));
    }

    /** What was done and what to do next. */
    List<String> next(PreviewFigures f) {
        List<String> lines = new ArrayList<>();
        if (f.out() == null) {
            return lines;
        }
        double milliseconds = 1000.0 * f.frames() / f.sampleRateHz();
        lines.add(
                speech.say(
                        "preview.written",
                        f.out(),
                        f.frames(),
                        f.sampleRateHz(),
                        speech.fixed("%.3f", milliseconds)));
        lines.add(speech.say("preview.next", f.file()));
        if (f.levelDb() != 0 && f.levelKept()) {
            lines.add(speech.say("preview.louder", speech.fixed("%+.1f", f.levelDb())));
        }
        return lines;
    }
}
