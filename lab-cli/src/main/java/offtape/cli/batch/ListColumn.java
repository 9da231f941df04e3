package offtape.cli.batch;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The columns that a list may have; all but the first may be missing, and empty cells say nothing.
 */
enum ListColumn {
    FILE,
    NAME,
    PROGRAMME,
    MODE,
    MACHINE_NAME,
    TAPE,
    TAPE_SPEED,
    CHANNELS,
    NOTE;

    /** As it stands at the head, which is also the option's name where there is one. */
    String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether a head names this column. */
    boolean isCalled(String head) {
        return key().equalsIgnoreCase(head);
    }

    /** The column of a head. */
    static Optional<ListColumn> of(String head) {
        return Arrays.stream(values()).filter(c -> c.isCalled(head)).findFirst();
    }

    /** All names, for messages. */
    static String names() {
        return Arrays.stream(values()).map(ListColumn::key).collect(Collectors.joining(", "));
    }
}
