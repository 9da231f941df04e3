package offtape.report.measure.processing;

import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;

/**
 * Highs whose gain falls with level from the quietest tones on and then no faster: noise reduction
 * that was on in recording only.
 *
 * <p>Tape takes off the more per decibel the louder a tone is: of a small signal the share that is
 * lost grows with the amplitude or its square, which makes a step of 6 dB lose two to four times as
 * much as the one before, until it holds the level altogether. Noise reduction lifts quiet highs by
 * an amount that falls steadily with level and is none at the reference.
 */
final class FallingHighs {

    private static final Sentences SAID = Sentences.near(FallingHighs.class);

    /** Tones below this are not lifted by all kinds. */
    private static final double LOWEST_HZ = 4000;

    /** So much must be lost over the lowest stretch to speak of, dB. */
    private static final double LEAST_DB = 0.8;

    /** Above this the tape may hold the level altogether, dB over a stretch of 6 dB. */
    private static final double MOST_DB = 2.5;

    /** Tape loses at least so much more over the next stretch. */
    private static final double TAPE_GROWTH = 1.5;

    private static final double STRETCH_DB = 6;

    private FallingHighs() {}

    /** The warning, if the ladder of highs shows that. */
    static Optional<HealthNote> in(Distortion ladder) {
        LadderGain gain = LadderGain.of(ladder);
        if (ladder.frequencyHz() < LOWEST_HZ || gain.size() == 0) {
            return Optional.empty();
        }
        double lowest = gain.steps().get(0).recordLevelDb();
        var middle = gain.atLevel(lowest + STRETCH_DB);
        var upper = gain.atLevel(lowest + 2 * STRETCH_DB);
        if (middle.isEmpty() || upper.isEmpty()) {
            return Optional.empty();
        }
        double first = gain.db(0) - middle.getAsDouble();
        double second = middle.getAsDouble() - upper.getAsDouble();
        double doubt = Math.sqrt(2) * gain.uncertaintyDb(0);
        boolean clear = first - doubt > LEAST_DB && first < MOST_DB;
        boolean slackens =
                second > first / 2
                        && second < TAPE_GROWTH * (first - doubt)
                        && fallsAllAlong(gain, lowest + 2 * STRETCH_DB);
        return clear && slackens
                ? Optional.of(note(ladder, lowest, first, second))
                : Optional.empty();
    }

    /** Step by step, as dropouts do not. */
    private static boolean fallsAllAlong(LadderGain gain, double toDb) {
        boolean falls = true;
        for (int i = 1; i < gain.size() && gain.steps().get(i).recordLevelDb() <= toDb; i++) {
            falls &= gain.db(i) < gain.db(i - 1);
        }
        return falls;
    }

    private static HealthNote note(Distortion ladder, double lowest, double first, double second) {
        return new HealthNote(
                "warning",
                "noise-reduction",
                SAID.say(
                        "highs-lifted",
                        ladder.channel(),
                        ladder.frequencyHz(),
                        first,
                        lowest,
                        lowest + STRETCH_DB,
                        second,
                        lowest + 2 * STRETCH_DB));
    }
}
