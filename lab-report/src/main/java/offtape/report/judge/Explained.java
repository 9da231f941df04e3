package offtape.report.judge;

import static offtape.report.judge.Judged.BALANCE;
import static offtape.report.judge.Judged.INTERCHANNEL_DELAY;
import static offtape.report.judge.Judged.LEVEL_AT_3_PERCENT;
import static offtape.report.judge.Judged.NOISE_DISTANCE;
import static offtape.report.judge.Judged.RESPONSE;
import static offtape.report.judge.Judged.SPEED_DEVIATION;
import static offtape.report.judge.Judged.WEIGHTED_NOISE_DISTANCE;
import static offtape.report.judge.Judged.WOW_AND_FLUTTER;

import java.util.Set;

/** Which figures a fault makes worse: common practice, no source. */
final class Explained {

    private Explained() {}

    /** Figures that a fault can push beyond their limits; none for a fault that is not known. */
    static Set<Judged> by(String fault) {
        return switch (fault) {
            case "dirty-head", "worn-head" -> Set.of(RESPONSE, BALANCE);
            case "azimuth", "record-azimuth", "azimuth-wander" ->
                    Set.of(RESPONSE, INTERCHANNEL_DELAY);
            case "magnetised-head" -> Set.of(RESPONSE, WEIGHTED_NOISE_DISTANCE, NOISE_DISTANCE);
            case "bias-low" ->
                    Set.of(
                            RESPONSE,
                            LEVEL_AT_3_PERCENT,
                            WEIGHTED_NOISE_DISTANCE,
                            NOISE_DISTANCE,
                            BALANCE);
            case "bias-high" -> Set.of(RESPONSE, LEVEL_AT_3_PERCENT, BALANCE);
            case "wrong-equalisation" -> Set.of(RESPONSE, WEIGHTED_NOISE_DISTANCE);
            case "record-electronics" ->
                    Set.of(
                            RESPONSE,
                            LEVEL_AT_3_PERCENT,
                            BALANCE,
                            WEIGHTED_NOISE_DISTANCE,
                            NOISE_DISTANCE);
            case "wrong-mains", "belt", "pinch-roller", "reel-tension" ->
                    Set.of(SPEED_DEVIATION, WOW_AND_FLUTTER);
            case "speed-setting" -> Set.of(SPEED_DEVIATION);
            case "capstan", "scrape-flutter", "motor-ripple" -> Set.of(WOW_AND_FLUTTER);
            case "weak-channel" ->
                    Set.of(BALANCE, LEVEL_AT_3_PERCENT, WEIGHTED_NOISE_DISTANCE, NOISE_DISTANCE);
            case "ground-loop", "supply-hum", "hiss", "erasure" ->
                    Set.of(WEIGHTED_NOISE_DISTANCE, NOISE_DISTANCE);
            case "overload" -> Set.of(LEVEL_AT_3_PERCENT, WEIGHTED_NOISE_DISTANCE, NOISE_DISTANCE);
            default -> Set.of();
        };
    }
}
