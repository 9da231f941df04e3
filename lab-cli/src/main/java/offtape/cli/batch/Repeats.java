package offtape.cli.batch;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import offtape.core.text.Sentences;

/**
 * Finds returns that a list names more than once. Once is enough where all is the same; where
 * something else is said of the same sound one of the two is wrong, and measured it would pass for
 * a second machine or a second tape. Other channels of a file are another return.
 */
final class Repeats {

    private static final Sentences SAID = Sentences.near(Repeats.class);

    private final Path list;
    private final Map<Sound, BatchEntry> first = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();

    Repeats(Path list) {
        this.list = list;
    }

    /** What is measured. */
    private record Sound(Path file, Object channels) {}

    /**
     * The entries without those that say nothing new, in the same order.
     *
     * @throws offtape.core.fault.UnusableInputException if two say different things of one return
     */
    List<BatchEntry> without(List<BatchEntry> entries) {
        List<BatchEntry> kept = new ArrayList<>();
        for (BatchEntry entry : entries) {
            BatchEntry earlier =
                    first.putIfAbsent(new Sound(whole(entry.file()), entry.channels()), entry);
            if (earlier == null) {
                kept.add(entry);
            } else if (saysTheSame(earlier, entry)) {
                notes.add(
                        SAID.say("repeated", list, entry.line(), entry.written(), earlier.line()));
            } else {
                throw EntryReader.refused(
                        list,
                        entry.line(),
                        SAID.say("repeated-otherwise", entry.written(), earlier.line())
                                + " "
                                + SAID.say("leave-one-out"));
            }
        }
        return kept;
    }

    /** What was left out, a sentence each. */
    List<String> notes() {
        return List.copyOf(notes);
    }

    private static boolean saysTheSame(BatchEntry a, BatchEntry b) {
        return Objects.equals(a.name(), b.name())
                && Objects.equals(whole(a.programme()), whole(b.programme()))
                && a.mode() == b.mode()
                && Objects.equals(a.machineName(), b.machineName())
                && Objects.equals(a.tape(), b.tape())
                && Objects.equals(a.tapeSpeed(), b.tapeSpeed())
                && Objects.equals(a.note(), b.note());
    }

    /** A path without links and detours, as far as it leads to something. */
    private static Path whole(Path path) {
        if (path == null) {
            return null;
        }
        try {
            return path.toRealPath();
        } catch (IOException e) {
            // that it is not there is told when its turn comes
            return path.toAbsolutePath().normalize();
        }
    }
}
