package offtape.cli.lineup;

import java.util.List;

/**
 * What to do now.
 *
 * @param wording how it is said
 */
record Words(Wording wording) {

    /** Sentences, the most urgent first; at least one. */
    List<String> of(Readings r) {
        return switch (r.stage()) {
            case NOISE -> List.of(wording.say("lineup.now-noise"));
            case MARK -> List.of(wording.say("lineup.now-mark"));
            case SETTLING ->
                    List.of(
                            wording.say(
                                    r.desk().sends() && !r.started()
                                            ? "lineup.now-rising"
                                            : "lineup.now-settling"));
            case READING -> reading(r);
        };
    }

    private List<String> reading(Readings r) {
        return switch (r.desk().view()) {
            case GAINS -> new LevelWords(wording).of(r);
            case AZIMUTH -> new AzimuthWords(wording).of(r);
            case BIAS -> new BiasWords(wording).of(r);
            case TAPE -> new TapeWords(wording).of(r, r.desk().limits().targetDbfs());
        };
    }
}
