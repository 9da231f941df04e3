package offtape.cli.guide;

/** What a machine can do at once. */
enum Heads {
    THREE("off-tape"),
    TWO("two-pass"),
    REPLAY("reference-tape");

    private final String mode;

    Heads(String mode) {
        this.mode = mode;
    }

    /** The capture mode of the commands. */
    String mode() {
        return mode;
    }
}
