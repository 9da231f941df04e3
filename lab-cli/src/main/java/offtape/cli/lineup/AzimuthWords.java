package offtape.cli.lineup;

import java.util.List;

/**
 * What to turn for azimuth, and when to stop.
 *
 * @param wording how it is said
 */
record AzimuthWords(Wording wording) {

    /** At 10 kHz a mono sum then loses 20·lg cos(π · 10 kHz · 3 µs) = 0.04 dB. */
    private static final double DONE_MICROSECONDS = 3;

    /** Sentences, the most urgent first; at least one. */
    List<String> of(Readings r) {
        PairReading pair = r.pair();
        if (pair == null) {
            return List.of(wording.say("lineup.azimuth-one-channel"));
        }
        return switch (pair.kind()) {
            case UNRELATED ->
                    List.of(
                            wording.say(
                                    r.desk().sends()
                                            ? "lineup.azimuth-unrelated"
                                            : "lineup.azimuth-unrelated-tape"));
            case ONE_TONE -> oneTone(pair, course(r));
            case DELAY -> delay(pair, course(r));
        };
    }

    private List<String> oneTone(PairReading pair, String course) {
        return List.of(
                wording.say("lineup.azimuth-periods", wording.of(pair.periodMicroseconds(), 1)),
                isDone(pair) ? wording.say("lineup.azimuth-in-step") : course);
    }

    private List<String> delay(PairReading pair, String course) {
        String advice =
                isDone(pair)
                        ? wording.say("lineup.azimuth-stop", wording.of(DONE_MICROSECONDS, 0))
                        : course;
        return pair.inverted()
                ? List.of(wording.say("lineup.azimuth-polarity"), advice)
                : List.of(advice);
    }

    private static boolean isDone(PairReading pair) {
        return Math.abs(pair.delayMicroseconds()) <= DONE_MICROSECONDS;
    }

    private String course(Readings r) {
        return switch (r.azimuth().course()) {
            case BETTER -> wording.say("lineup.azimuth-better");
            case WORSE -> wording.say("lineup.azimuth-worse");
            case STEADY ->
                    wording.say(
                            r.desk().sends()
                                    ? "lineup.azimuth-record-head"
                                    : "lineup.azimuth-replay-head");
        };
    }
}
