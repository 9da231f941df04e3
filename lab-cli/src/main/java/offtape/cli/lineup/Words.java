package offtape.cli.lineup;

import java.util.List;

/** What to do now. */
final class Words {

    private Words() {}

    /** Sentences, the most urgent first; at least one. */
    static List<String> of(Readings r) {
        return switch (r.stage()) {
            case NOISE -> List.of("Nothing is sent for a moment: the noise is measured.");
            case MARK -> List.of("A short mark is sent to measure the delay.");
            case SETTLING ->
                    List.of(
                            r.desk().sends() && !r.started()
                                    ? "The sound rises slowly; readings follow in a few seconds."
                                    : "Readings follow in a moment.");
            case READING -> reading(r);
        };
    }

    private static List<String> reading(Readings r) {
        return switch (r.desk().view()) {
            case GAINS -> LevelWords.of(r);
            case AZIMUTH -> AzimuthWords.of(r);
            case BIAS -> BiasWords.of(r);
            case TAPE -> TapeWords.of(r, r.desk().limits().targetDbfs());
        };
    }
}
