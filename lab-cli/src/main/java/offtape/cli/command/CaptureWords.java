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
    private final Speech speech;
    private double toldSeconds = -PLAIN_EVERY_S;

    CaptureWords(Terminal terminal) {
        this.terminal = terminal;
        this.speech = Speech.of(terminal);
    }

    /** Level, clipping and remaining time; redrawn on a terminal, now and then elsewhere. */
    void progress(double seconds, double ofSeconds, double[] peaks, boolean clipped) {
        if (!terminal.isInteractive() && seconds - toldSeconds < PLAIN_EVERY_S) {
            return;
        }
        toldSeconds = seconds;
        StringBuilder levels = new StringBuilder();
        for (double peak : peaks) {
            levels.append(peak > 0 ? dbfs(peak) : speech.say("capture.silent")).append("  ");
        }
        String line =
                speech.say(
                        peaks.length == 0 ? "capture.playing" : "capture.recording",
                        minutes((long) seconds),
                        minutes(Math.max(0, Math.round(ofSeconds - seconds))),
                        levels,
                        clipped ? speech.say("capture.clipped") : "");
        terminal.status(line.stripTrailing());
    }

    private static String minutes(long seconds) {
        return String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
    }

    private String dbfs(double peak) {
        return speech.say("capture.dbfs", Decibels.ofAmplitude(peak));
    }

    /** What came of it. */
    List<String> recorded(CaptureResult result, Path place) {
        List<String> lines = new ArrayList<>();
        if (result.frames() == 0) {
            return List.of(speech.say("capture.nothing"));
        }
        lines.add(speech.say(result.complete() ? "capture.written" : "capture.broken-off", place));
        if (result.isSilent()) {
            lines.add(speech.say("capture.digital-silence"));
        }
        if (result.clippedFrames() > 0) {
            lines.add(speech.say("capture.full-scale", result.clippedFrames()));
        }
        lines.addAll(troubles(result));
        return lines;
    }

    /** What came of playing alone. */
    List<String> played(CaptureResult result) {
        List<String> lines = new ArrayList<>();
        lines.add(speech.say(result.complete() ? "capture.played" : "capture.not-whole"));
        lines.addAll(troubles(result));
        return lines;
    }

    /** What went wrong on the way. */
    List<String> troubles(CaptureResult result) {
        List<String> lines = new ArrayList<>();
        for (CaptureMarks.Trouble t :
                result.marks().troubles().stream().limit(MOST_TROUBLES).toList()) {
            lines.add(
                    speech.say(
                            t.kind() == CaptureMarks.Kind.GAP_PLAYED
                                    ? "capture.gap-played"
                                    : "capture.sound-lost",
                            t.seconds()));
        }
        int more = result.marks().troubles().size() - MOST_TROUBLES;
        if (more > 0) {
            lines.add(speech.say("capture.more", more));
        }
        return lines;
    }
}
