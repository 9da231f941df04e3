package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;

/** A preview in words. */
final class PreviewWords {

    private PreviewWords() {}

    /** The figures. */
    static List<String> lines(PreviewFigures f) {
        List<String> lines = new ArrayList<>();
        if (f.out() != null) {
            lines.add(
                    "Machine: "
                            + (f.machineName() == null ? "the session's" : f.machineName())
                            + ". Parts: "
                            + (f.parts().isEmpty() ? "none" : String.join(", ", f.parts()))
                            + "; noise and motion of seed "
                            + f.seed()
                            + ".");
            levels(f, lines);
        }
        if (f.nulls() != null) {
            lines.add("Null against the simulated machine, best common delay and gain taken out:");
            f.nulls().forEach(n -> lines.add(nullLine(n)));
        }
        return lines;
    }

    private static void levels(PreviewFigures f, List<String> lines) {
        if (f.peakInDbfs() != null) {
            lines.add(
                    Figures.text(
                            "Peak in %.1f dBFS, sent at %+.1f dB re the reference of %.1f dBFS.",
                            f.peakInDbfs(), f.peakSentDb(), f.referenceDbfs()));
        }
        if (f.k3AtPeakPercent() != null) {
            lines.add(
                    Figures.text(
                            "A tone of 1 kHz with that peak: K3 %.3g %%, compressed by %.2f dB.",
                            f.k3AtPeakPercent(), f.compressionAtPeakDb()));
        }
        if (f.peakOutDbfs() != null) {
            lines.add(
                    Figures.text("Peak out %.1f dBFS, ", f.peakOutDbfs())
                            + (f.encoding().equals("pcm-24") ? "24 bits." : "32-bit float."));
        }
    }

    private static String nullLine(PreviewFigures.Null n) {
        return Figures.text("  %6.1f dB  ", n.nullDb()) + String.join(" + ", n.parts());
    }

    /** What was done and what to do next. */
    static List<String> next(PreviewFigures f) {
        List<String> lines = new ArrayList<>();
        if (f.out() == null) {
            return lines;
        }
        double milliseconds = 1000.0 * f.frames() / f.sampleRateHz();
        lines.add(
                Figures.text(
                        "Written: %s, %d samples at %d Hz (%.3f ms), as long as the file.",
                        f.out(), f.frames(), f.sampleRateHz(), milliseconds));
        lines.add(
                "Next: put it on a track of its own at the same start as "
                        + f.file()
                        + " (0 samples, 0 ms of offset) and compare. The machine's delay is not in it.");
        if (f.levelDb() != 0 && f.levelKept()) {
            lines.add(
                    Figures.text(
                            "It is %+.1f dB louder than the file was: lower its fader by as much"
                                    + " before you compare.",
                            f.levelDb()));
        }
        return lines;
    }
}
