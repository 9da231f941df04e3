package offtape.report.measure.tone;

/**
 * A steady tone in a recording, or two tones at once.
 *
 * @param fromSeconds start
 * @param toSeconds end
 * @param frequencyHz its frequency, within about 0.1 %; of two the lower
 * @param secondHz frequency of the strongest other tone that sounds along
 * @param secondDb level of that one re the tone, dB; very low if there is none
 * @param fadeDb how far the tone lies at its end below its mean level, dB
 */
public record FoundTone(
        double fromSeconds,
        double toSeconds,
        double frequencyHz,
        double secondHz,
        double secondDb,
        double fadeDb) {

    /** How long it lasts. */
    public double seconds() {
        return toSeconds - fromSeconds;
    }

    /** This and what follows as one tone. */
    public FoundTone until(FoundTone later) {
        double share = seconds() / (seconds() + later.seconds());
        return new FoundTone(
                fromSeconds,
                later.toSeconds,
                share * frequencyHz + (1 - share) * later.frequencyHz,
                secondHz,
                secondDb,
                later.fadeDb);
    }

    /** Whether the frequencies lie within a share of each other. */
    public boolean isNear(double hz, double share) {
        return Math.abs(Math.log(frequencyHz / hz)) <= Math.log1p(share);
    }
}
