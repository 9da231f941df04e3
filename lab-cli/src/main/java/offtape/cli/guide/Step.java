package offtape.cli.guide;

/** The steps, in order. */
enum Step {
    MACHINE("machine", "say what kind of machine it is"),
    DEVICES("devices", "choose the sound devices"),
    LOOPBACK("loopback", "let the interface measure itself, without the machine"),
    LINE_UP("line-up", "set levels and balance"),
    CAPTURE("capture", "play the programme and record its return"),
    MEASURE("measure", "work out the figures"),
    REPORT("report", "open the report");

    private final String key;
    private final String what;

    Step(String key, String what) {
        this.key = key;
        this.what = what;
    }

    /** A short name by which it can be chosen. */
    String key() {
        return key;
    }

    /** What is done in it. */
    String what() {
        return what;
    }

    /** Its number in the list, from 1. */
    int number() {
        return ordinal() + 1;
    }
}
