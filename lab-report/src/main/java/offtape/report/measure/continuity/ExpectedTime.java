package offtape.report.measure.continuity;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * How long stretches of the programme should take to be heard, from the frequencies of its tones:
 * those of a tone from its own, others from the tones next to them.
 */
final class ExpectedTime {

    /** So many tones to either side of a stretch tell its speed. */
    private static final int SIDE = 3;

    private static final double MAD_TO_SIGMA = 1.4826;

    private final List<HeardTone> tones;

    /** How much the speed of one tone differs from that of another, one standard deviation. */
    private final double unsteadiness;

    ExpectedTime(List<HeardTone> tones) {
        this.tones = tones;
        double[] all = tones.stream().mapToDouble(HeardTone::stretch).toArray();
        this.unsteadiness = all.length == 0 ? 0 : scatter(all, new Median().evaluate(all));
    }

    /**
     * By how much later the end of a stretch is heard than its beginning.
     *
     * @param doubtSeconds what changes of speed may make of it, one standard deviation
     */
    record Later(double seconds, double doubtSeconds) {}

    /** Of a stretch of the programme; empty if there are too few tones. */
    Optional<Later> between(double fromSeconds, double toSeconds) {
        double length = toSeconds - fromSeconds;
        for (HeardTone t : tones) {
            if (t.holds(fromSeconds, toSeconds)) {
                return Optional.of(new Later((t.stretch() - 1) * length, 0));
            }
        }
        double middle = (fromSeconds + toSeconds) / 2;
        double[] before = stretches(t -> t.toSeconds() < middle, true);
        double[] after = stretches(t -> t.fromSeconds() > middle, false);
        if (before.length == 0 || after.length == 0) {
            return Optional.empty();
        }
        double first = new Median().evaluate(before);
        double last = new Median().evaluate(after);
        // few tones may be alike by chance where a slow wow swings all the same
        double scatter = Math.max(scatter(before, first), scatter(after, last));
        double swing = Math.max(scatter, unsteadiness);
        double doubt = length * Math.hypot(swing, (last - first) / 2);
        return Optional.of(new Later(((first + last) / 2 - 1) * length, doubt));
    }

    private double[] stretches(Predicate<HeardTone> which, boolean latest) {
        List<HeardTone> chosen = tones.stream().filter(which).toList();
        int skip = latest ? Math.max(0, chosen.size() - SIDE) : 0;
        return chosen.stream().skip(skip).limit(SIDE).mapToDouble(HeardTone::stretch).toArray();
    }

    private static double scatter(double[] x, double middle) {
        double[] away = x.clone();
        for (int i = 0; i < away.length; i++) {
            away[i] = Math.abs(away[i] - middle);
        }
        return MAD_TO_SIGMA * new Median().evaluate(away);
    }
}
