package offtape.report.measure.processing;

import java.util.Optional;
import java.util.stream.IntStream;
import offtape.core.text.Sentences;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.LadderStep;

/**
 * Gain that falls with level though hardly any harmonics appear: a limiter or compressor.
 *
 * <p>A characteristic without memory that takes the share c off a loud tone gives it harmonics. Of
 * a cubic one, y = x − a·x³, the fundamental of a sine of amplitude A is A·(1 − ¾·a·A²) and its
 * third harmonic ¼·a·A³, so c is 3·K3; of one that bends with the square, y = x − b·x·|x|, c is
 * 8/(3π)·b·A and the third harmonic 8/(15π)·b·A², so c is 5·K3; steeper ones have less. Losses
 * between recording and return may take some decibels off the harmonics, so that c comes to 8·K3 at
 * most. All of these lose less over K3 the louder a tone is, so the lower steps tell what the upper
 * ones may lose; what clips begins with c as large as K3 and ends, as a square wave, with 3·K3, so
 * that much is always allowed. A limiter turns the gain down slowly and leaves the sine a sine.
 */
final class GainWithoutDistortion {

    private static final Sentences SAID = Sentences.near(GainWithoutDistortion.class);

    /** Share that a tone loses, over its distortion, at most, on tape. */
    private static final double MOST_SHARE = 8;

    /** What a cubic loses over its distortion, and a square wave, whose K3 is a third. */
    private static final double LEAST_SHARE = 3;

    /** Beyond what distortion explains so much must be lost to speak of, dB. */
    private static final double LEAST_DB = 1;

    /** Ladders above this have their third harmonic where tape falls off. */
    private static final double HIGHEST_HZ = 1500;

    /** What a machine's level may waver between two steps, dB. */
    private static final double WAVER_DB = 0.3;

    private static final int FEWEST = 6;

    /** Steps at least so far below one tell what the same tape loses, dB. */
    private static final double BELOW_DB = 6;

    /** Room for readings and for tape that loses a little more when it is loud, a factor. */
    private static final double ROOM = 1.2;

    /** So many times its uncertainty a loss is clear, and K3 from such a share on. */
    private static final double CLEAR = 4;

    private static final double CLEAR_K3 = 0.003;
    private static final int TELLING = 3;

    private final Distortion ladder;
    private final LadderGain gain;

    private GainWithoutDistortion(Distortion ladder) {
        this.ladder = ladder;
        this.gain = LadderGain.of(ladder);
    }

    /** The warning, if the ladder's uppermost steps, one after another, lose too much. */
    static Optional<HealthNote> in(Distortion ladder) {
        GainWithoutDistortion all = new GainWithoutDistortion(ladder);
        int top = all.gain.size() - 1;
        if (ladder.frequencyHz() > HIGHEST_HZ || all.gain.size() < FEWEST) {
            return Optional.empty();
        }
        boolean steady = all.unexplainedDb(top - 1) > LEAST_DB / 2 && all.falls(top);
        return all.unexplainedDb(top) > LEAST_DB && steady
                ? Optional.of(all.note(top))
                : Optional.empty();
    }

    private boolean falls(int top) {
        return gain.db(top) < gain.db(top - 1) + WAVER_DB
                && gain.db(top - 1) < gain.db(top - 2) + WAVER_DB;
    }

    private double lostDb(int step) {
        return gain.db(0) - gain.db(step);
    }

    private double unexplainedDb(int step) {
        double explained =
                Math.min(MOST_SHARE * distortion(step), ownShare(step) * thirdHarmonic(step));
        return lostDb(step)
                + 20 * Math.log10(Math.max(0.01, 1 - explained))
                - Math.hypot(gain.uncertaintyDb(0), gain.uncertaintyDb(step));
    }

    /**
     * Share lost over K3 at the lowest steps where both are clear, the middle one of them: of a
     * characteristic it becomes less towards higher levels. Without bound if too few tell it.
     */
    private double ownShare(int step) {
        double[] lowest =
                IntStream.range(1, step)
                        .filter(i -> isClear(i) && level(i) <= level(step) - BELOW_DB)
                        .limit(TELLING)
                        .mapToDouble(i -> share(lostDb(i)) / thirdHarmonic(i))
                        .sorted()
                        .toArray();
        return lowest.length < TELLING
                ? Double.POSITIVE_INFINITY
                : Math.max(LEAST_SHARE, ROOM * lowest[TELLING / 2]);
    }

    private boolean isClear(int step) {
        double doubt = Math.hypot(gain.uncertaintyDb(0), gain.uncertaintyDb(step));
        return lostDb(step) > CLEAR * doubt
                && gain.steps().get(step).k3StandsOut()
                && thirdHarmonic(step) > CLEAR_K3;
    }

    private double level(int step) {
        return gain.steps().get(step).recordLevelDb();
    }

    private static double share(double lostDb) {
        return 1 - Math.pow(10, -lostDb / 20);
    }

    /** K3 as a share; 1 where it is not known. */
    private double thirdHarmonic(int step) {
        Double percent = gain.steps().get(step).k3Percent();
        return percent == null ? 1 : percent / 100;
    }

    /** All harmonics, or the bound on them, as a share; 1 where nothing is known. */
    private double distortion(int step) {
        LadderStep s = gain.steps().get(step);
        Double percent = s.thdPercent() != null ? s.thdPercent() : s.noise().thdBelowPercent();
        return percent == null ? 1 : percent / 100;
    }

    private HealthNote note(int top) {
        LadderStep step = gain.steps().get(top);
        return new HealthNote(
                "warning",
                "gain-follows-level",
                SAID.say(
                        "gain-follows-level",
                        step.recordLevelDb(),
                        ladder.frequencyHz(),
                        lostDb(top),
                        ladder.channel(),
                        100 * distortion(top)));
    }
}
