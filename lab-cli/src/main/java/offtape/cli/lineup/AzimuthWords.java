package offtape.cli.lineup;

import java.util.List;

/** What to turn for azimuth, and when to stop. */
final class AzimuthWords {

    /** At 10 kHz a mono sum then loses 20·lg cos(π · 10 kHz · 3 µs) = 0.04 dB. */
    private static final double DONE_MICROSECONDS = 3;

    private AzimuthWords() {}

    /** Sentences, the most urgent first; at least one. */
    static List<String> of(Readings r) {
        PairReading pair = r.pair();
        if (pair == null) {
            return List.of("Azimuth takes two channels, and one is recorded.");
        }
        return switch (pair.kind()) {
            case UNRELATED ->
                    List.of(
                            "The channels have too little in common to time them. Check that both"
                                    + " come back"
                                    + (r.desk().sends()
                                            ? "."
                                            : ", and replay a tape with noise or a tone on its"
                                                    + " whole width."));
            case ONE_TONE -> oneTone(pair, course(r));
            case DELAY -> delay(pair, course(r));
        };
    }

    private static List<String> oneTone(PairReading pair, String course) {
        return List.of(
                "A single tone repeats: the delay is told but for whole periods of "
                        + Decimals.of(pair.periodMicroseconds(), 1)
                        + " µs. Begin with a low tone (1 kHz or below) or with noise, and end with"
                        + " the highest.",
                Math.abs(pair.delayMicroseconds()) <= DONE_MICROSECONDS
                        ? "At this tone the channels are in step."
                        : course);
    }

    private static List<String> delay(PairReading pair, String course) {
        String polarity =
                "The channels are of opposite polarity: find the turned cable or head wire first.";
        String advice =
                Math.abs(pair.delayMicroseconds()) <= DONE_MICROSECONDS
                        ? "Within "
                                + Decimals.of(DONE_MICROSECONDS, 0)
                                + " µs, 0.04 dB of a mono sum at 10 kHz: stop here, and seal the screw"
                                + " if the head was sealed."
                        : course;
        return pair.inverted() ? List.of(polarity, advice) : List.of(advice);
    }

    private static String course(Readings r) {
        return switch (r.azimuth().course()) {
            case BETTER -> "Getting better: go on the same way, slowly.";
            case WORSE -> "Getting worse: turn the other way.";
            case STEADY ->
                    r.desk().sends()
                            ? "Turn the azimuth screw of the record head a little and wait a second:"
                                    + " the delay has to go towards 0. The replay head comes first,"
                                    + " by a calibration tape (--listen)."
                            : "Turn the azimuth screw of the replay head a little and wait a second:"
                                    + " the delay has to go towards 0.";
        };
    }
}
