package offtape.cli.guide;

/** What a machine can do at once. */
enum Heads {
    THREE("three heads: replays while it records", "off-tape"),
    TWO("two heads: records, then replays", "two-pass"),
    REPLAY("replays only, a tape recorded elsewhere", "reference-tape");

    private final String words;
    private final String mode;

    Heads(String words, String mode) {
        this.words = words;
        this.mode = mode;
    }

    /** For somebody who chooses. */
    String words() {
        return words;
    }

    /** The capture mode of the commands. */
    String mode() {
        return mode;
    }
}
