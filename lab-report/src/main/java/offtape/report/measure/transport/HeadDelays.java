package offtape.report.measure.transport;

import java.util.Optional;
import java.util.OptionalDouble;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.result.HealthNote;

/**
 * Decides on the time between the heads: what the delay less the interface's own says, or the
 * distance of the heads over the tape's speed, held against what the return itself shows.
 */
public final class HeadDelays {

    private static final Sentences SAID = Sentences.near(HeadDelays.class);

    /** What a person's distance of heads and the tape's true speed may be out by, one sigma. */
    private static final double SPACING_SHARE = 0.012;

    /**
     * Interfaces answer after 3 to 40 ms (common practice, no source): what is taken off a delay
     * that holds the interface's own, and its standard uncertainty.
     */
    private static final double INTERFACE_S = 0.02;

    private static final double INTERFACE_SIGMA_S = 0.011;

    /** A delay less than this many times the interface's does not tell that of the heads. */
    private static final double LEAST_TIMES = 3;

    /** Two figures contradict each other beyond this many standard deviations. */
    private static final double CONTRADICTED = 4;

    private final HeardDeviation heard;
    private final double programmeDelaySeconds;

    /**
     * A decision.
     *
     * @param heard the return's deviation
     * @param programmeDelaySeconds where the programme begins in the recording
     */
    public HeadDelays(HeardDeviation heard, double programmeDelaySeconds) {
        this.heard = heard;
        this.programmeDelaySeconds = programmeDelaySeconds;
    }

    /**
     * The time between two heads on one tape as the return itself shows it, seconds; empty if it
     * does not.
     *
     * @param longestSeconds longest time that is possible
     */
    public static OptionalDouble shown(HeardDeviation heard, double longestSeconds) {
        return CombDelay.find(heard, longestSeconds)
                .map(c -> OptionalDouble.of(c.seconds()))
                .orElseGet(OptionalDouble::empty);
    }

    /**
     * The time between the heads.
     *
     * @param measured delay less the interface's own, ms, if it is known
     * @param spacingSeconds distance of the heads over the tape's speed, or null
     * @return empty if nothing tells it
     */
    public Optional<HeadDelay> decide(Quantity measured, Double spacingSeconds) {
        if (measured.isKnown() && measured.value() > 0) {
            return Optional.of(
                    held(measured.value() / 1000, measured.uncertainty() / 2000, "loopback"));
        }
        if (spacingSeconds != null) {
            return Optional.of(held(spacingSeconds, SPACING_SHARE * spacingSeconds, "spacing"));
        }
        return alone();
    }

    /**
     * What is known beforehand, with what the return shows.
     *
     * @param by how it is known, as the sentences' names have it
     */
    private HeadDelay held(double seconds, double sigma, String by) {
        String found = SAID.say("found-by-" + by);
        Optional<CombDelay> shown = CombDelay.find(heard, CombDelay.LONGEST_S);
        if (shown.isEmpty()) {
            return new HeadDelay(seconds, sigma, found, null);
        }
        CombDelay comb = shown.get();
        double apart = Math.abs(comb.seconds() - seconds);
        if (apart > CONTRADICTED * Math.hypot(sigma, comb.sigmaSeconds())) {
            return new HeadDelay(
                    comb.seconds(),
                    comb.sigmaSeconds(),
                    SAID.say("found-by-itself"),
                    new HealthNote(
                            "warning",
                            "head-delay-contradicted",
                            SAID.say("contradicted-" + by, 1000 * seconds, 1000 * comb.seconds())));
        }
        double own = 1 / (sigma * sigma);
        double other = 1 / (comb.sigmaSeconds() * comb.sigmaSeconds());
        return new HeadDelay(
                (own * seconds + other * comb.seconds()) / (own + other),
                1 / Math.sqrt(own + other),
                found + " " + SAID.say("wavering-agrees"),
                null);
    }

    private Optional<HeadDelay> alone() {
        Optional<CombDelay> shown = CombDelay.find(heard, programmeDelaySeconds);
        if (shown.isPresent()) {
            return Optional.of(
                    new HeadDelay(
                            shown.get().seconds(),
                            shown.get().sigmaSeconds(),
                            SAID.say("found-by-itself"),
                            null));
        }
        boolean together =
                programmeDelaySeconds > LEAST_TIMES * INTERFACE_S
                        && programmeDelaySeconds < CombDelay.LONGEST_S;
        return together
                ? Optional.of(
                        new HeadDelay(
                                programmeDelaySeconds - INTERFACE_S,
                                INTERFACE_SIGMA_S,
                                SAID.say("found-by-delay"),
                                null))
                : Optional.empty();
    }
}
