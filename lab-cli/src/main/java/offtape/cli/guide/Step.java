package offtape.cli.guide;

/** The steps, in order. */
enum Step {
    MACHINE("machine"),
    DEVICES("devices"),
    LOOPBACK("loopback"),
    LINE_UP("line-up"),
    CAPTURE("capture"),
    MEASURE("measure"),
    REPORT("report");

    private final String key;

    Step(String key) {
        this.key = key;
    }

    /** A short name by which it can be chosen. */
    String key() {
        return key;
    }

    /** Its number in the list, from 1. */
    int number() {
        return ordinal() + 1;
    }
}
