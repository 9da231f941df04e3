package offtape.cli.command;

import java.util.Locale;

/** The capture modes that can be measured. */
enum CaptureModeOption {
    /** A tape recorded elsewhere, replayed only. */
    REFERENCE_TAPE;

    /** The name in results and on the command line. */
    String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Shown by the help and understood by the parser. */
    @Override
    public String toString() {
        return key();
    }
}
