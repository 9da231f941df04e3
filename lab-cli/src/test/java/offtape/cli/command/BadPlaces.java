package offtape.cli.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;

/** Places that are not what they should be, by name. */
final class BadPlaces {

    private final Map<String, Function<Lab, Path>> all = new TreeMap<>();

    BadPlaces() {
        all.put("nowhere", l -> l.path("nowhere"));
        all.put("file", l -> l.file("file", "mine"));
        all.put("under-file", l -> l.file("plain", "mine").resolve("session"));
        all.put("dangling-link", l -> link(l, "dangling-link", l.path("gone")));
        all.put("link-loop", l -> link(l, "link-loop", l.path("link-loop")));
        all.put("endless", l -> link(l, "endless", Path.of("/dev/zero")));
        all.put("endless-sheet", BadPlaces::endlessSheet);
        all.put("moved-for-no-time", l -> moved(l, "0.001"));
        all.put("moved-backwards", l -> moved(l, "-1"));
        all.put("full", l -> Path.of("/dev/full"));
        all.put("spaces", l -> l.file("erste Seite – 磁帯/übung 1.wav", "no sound"));
    }

    /** Names and what makes them. */
    Map<String, Function<Lab, Path>> all() {
        return all;
    }

    private static Path endlessSheet(Lab l) {
        Path sound = l.same("endless-sheet/programme.wav", l.programme().resolve("programme.wav"));
        link(l, "endless-sheet/programme.json", Path.of("/dev/zero"));
        return sound.getParent();
    }

    /** A machine whose motion has rows that far apart, seconds. */
    private static Path moved(Lab l, String apart) {
        StringBuilder rows = new StringBuilder("seconds,late\n");
        for (int i = 0; i < 20; i++) {
            rows.append(i * Double.parseDouble(apart)).append(",0\n");
        }
        l.file("motion" + apart + ".csv", rows.toString());
        return l.file(
                "moved" + apart + ".json",
                "{\"format\": \"offtape-machine\", \"version\": 1, \"transport\": {\"motion\":"
                        + " {\"csv\": \"motion"
                        + apart
                        + ".csv\"}}}");
    }

    private static Path link(Lab l, String name, Path to) {
        try {
            return Files.createSymbolicLink(l.path(name), to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
