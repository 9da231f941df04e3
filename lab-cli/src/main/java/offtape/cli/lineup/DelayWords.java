package offtape.cli.lineup;

/** The delay in words, with what is in it. */
final class DelayWords {

    private DelayWords() {}

    static String of(Delay delay) {
        return switch (delay.state()) {
            case NONE -> "-";
            case MISSING -> "the mark did not come back; m sends it again";
            case FOUND -> found(delay);
        };
    }

    private static String found(Delay delay) {
        String now =
                Decimals.of(delay.milliseconds(), 2)
                        + " ms, the computer's buffers"
                        + (delay.gaps() ? " and gaps (it was late)" : "")
                        + " included; ";
        if (delay.marks() < 2) {
            return now + "switch from source to tape and press m: the change is the tape's";
        }
        if (Math.abs(delay.moreMilliseconds()) < 0.005) {
            return now + "unchanged since the first mark";
        }
        return now
                + Decimals.of(Math.abs(delay.moreMilliseconds()), 2)
                + (delay.moreMilliseconds() < 0 ? " ms less" : " ms more")
                + " than at first";
    }
}
