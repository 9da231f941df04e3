package offtape.cli.guide;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** The commands that do a step, as somebody would type them. */
final class CommandLines {

    private CommandLines() {}

    /** Where the programme lies. */
    static Path programme(Answers a) {
        String speed = a.tapeSpeed().replaceAll("[^A-Za-z0-9.]", "");
        return a.folder().resolve("programme-" + speed + (a.brief() ? "-short" : ""));
    }

    /** Writes the programme. */
    static List<String> prepare(Answers a) {
        List<String> words = words("prepare", "--out", programme(a), "--tape-speed", a.tapeSpeed());
        if (a.brief()) {
            words.add("--short");
        }
        return words;
    }

    /** Measures the interface by itself. */
    static List<String> loopback(Answers a, Path wav, Path session) {
        List<String> words = words("capture", "--programme", programme(a), "--out", wav);
        words.addAll(words("--mode", "loopback", "--measure", session));
        words.addAll(a.devices());
        return words;
    }

    /** Sets levels. */
    static List<String> lineUp(Answers a) {
        List<String> words = words("lineup", "--programme", programme(a));
        if (a.heads() == Heads.REPLAY) {
            words.addAll(words("--aid", "replay", "--listen"));
        }
        words.addAll(a.devices());
        return words;
    }

    /** Plays the programme onto a tape that is replayed later. */
    static List<String> record(Answers a) {
        List<String> words = words("capture", "--programme", programme(a), "--pass", "record");
        words.addAll(a.devices());
        return words;
    }

    /** Records the return, while the programme plays if the machine has three heads. */
    static List<String> capture(Answers a, Path wav) {
        List<String> words = words("capture", "--programme", programme(a), "--out", wav);
        if (a.heads() == Heads.TWO) {
            words.addAll(words("--pass", "replay"));
        }
        words.addAll(words("--mode", a.heads().mode()));
        words.addAll(a.devices());
        return words;
    }

    /** Measures the return. */
    static List<String> measure(Answers a, Path session) {
        List<String> words =
                words("measure", a.recording(), "--programme", programme(a), "--out", session);
        words.addAll(words("--mode", a.heads().mode(), "--tape-speed", a.tapeSpeed()));
        words.addAll(words("--machine-name", a.machineName()));
        if (a.loopback() != null) {
            words.addAll(words("--loopback", a.loopback()));
        }
        return words;
    }

    private static List<String> words(Object... words) {
        return new ArrayList<>(Arrays.stream(words).map(Object::toString).toList());
    }

    /** As it is typed: words with spaces and the like in quotes. */
    static String typed(List<String> words) {
        return words.stream()
                .map(w -> w.matches("[\\w./:=,+-]+") ? w : "\"" + w.replace("\"", "\\\"") + "\"")
                .collect(Collectors.joining(" ", "offtape ", ""));
    }
}
