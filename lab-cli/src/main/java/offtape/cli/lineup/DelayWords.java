package offtape.cli.lineup;

/**
 * The delay in words, with what is in it.
 *
 * @param wording how it is said
 */
record DelayWords(Wording wording) {

    String of(Delay delay) {
        return switch (delay.state()) {
            case NONE -> "-";
            case MISSING -> wording.say("lineup.delay-missing");
            case FOUND -> found(delay);
        };
    }

    private String found(Delay delay) {
        String now =
                wording.say(
                        delay.gaps() ? "lineup.delay-late" : "lineup.delay-now",
                        wording.of(delay.milliseconds(), 2));
        if (delay.marks() < 2) {
            return wording.say("lineup.delay-first", now);
        }
        double more = delay.moreMilliseconds();
        if (Math.abs(more) < 0.005) {
            return wording.say("lineup.delay-same", now);
        }
        return wording.say(
                more < 0 ? "lineup.delay-less" : "lineup.delay-more",
                now,
                wording.of(Math.abs(more), 2));
    }
}
