package offtape.cli.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.cli.capture.CaptureMarks;
import offtape.cli.capture.CaptureResult;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.Decibels;

/** A recording in words, while it is made and afterwards. */
final class CaptureWords {

    private static final double PLAIN_EVERY_S = 10;
    private static final int MOST_TROUBLES = 8;

    private final Terminal terminal;
    private double toldSeconds = -PLAIN_EVERY_S;

    CaptureWords(Terminal terminal) {
        this.terminal = terminal;
    }

    /** Level, clipping and remaining time; redrawn on a terminal, now and then elsewhere. */
    void progress(double seconds, double ofSeconds, double[] peaks, boolean clipped) {
        if (!terminal.isInteractive() && seconds - toldSeconds < PLAIN_EVERY_S) {
            return;
        }
        toldSeconds = seconds;
        StringBuilder levels = new StringBuilder();
        for (double peak : peaks) {
            levels.append(peak > 0 ? dbfs(peak) : "silent").append("  ");
        }
        long left = Math.max(0, Math.round(ofSeconds - seconds));
        String line =
                String.format(
                        Locale.ROOT,
                        "%s %d:%02d, %d:%02d left  %s%s",
                        peaks.length == 0 ? "Playing" : "Recording",
                        (long) seconds / 60,
                        (long) seconds % 60,
                        left / 60,
                        left % 60,
                        levels,
                        clipped ? "CLIPPED" : "");
        terminal.status(line.stripTrailing());
    }

    private static String dbfs(double peak) {
        return String.format(Locale.ROOT, "%.1f dBFS", Decibels.ofAmplitude(peak));
    }

    /** What came of it. */
    List<String> recorded(CaptureResult result, Path place) {
        List<String> lines = new ArrayList<>();
        if (result.frames() == 0) {
            return List.of("Broken off before anything was recorded.");
        }
        lines.add(
                result.complete()
                        ? "Written: " + place
                        : "Broken off; what was recorded is kept in " + place + ".");
        if (result.isSilent()) {
            lines.add(
                    "Mind: nothing but digital silence came in. Check that the input is not muted,"
                            + " that the channels are the right ones, and that this terminal may"
                            + " use the microphone.");
        }
        if (result.clippedFrames() > 0) {
            lines.add(
                    "Mind: the input reached full scale in "
                            + result.clippedFrames()
                            + " frames. Lower the input gain and record again.");
        }
        lines.addAll(troubles(result));
        return lines;
    }

    /** What came of playing alone. */
    List<String> played(CaptureResult result) {
        List<String> lines = new ArrayList<>();
        lines.add(
                result.complete()
                        ? "Played. Stop the machine, rewind, and run the same with --pass replay"
                                + " --out FILE.wav."
                        : "Broken off: what is on the tape is not whole.");
        lines.addAll(troubles(result));
        return lines;
    }

    /** What went wrong on the way. */
    List<String> troubles(CaptureResult result) {
        List<String> lines = new ArrayList<>();
        for (CaptureMarks.Trouble t :
                result.marks().troubles().stream().limit(MOST_TROUBLES).toList()) {
            lines.add(
                    String.format(
                            Locale.ROOT,
                            "Mind: about %.1f s into the recording, %s. Record again, with a longer"
                                    + " --buffer or fewer other programs.",
                            t.seconds(),
                            t.kind() == CaptureMarks.Kind.GAP_PLAYED
                                    ? "the computer was late and a gap was played"
                                    : "sound was lost, or nearly so, because the computer was late"));
        }
        int more = result.marks().troubles().size() - MOST_TROUBLES;
        if (more > 0) {
            lines.add("Mind: " + more + " more such places.");
        }
        return lines;
    }
}
