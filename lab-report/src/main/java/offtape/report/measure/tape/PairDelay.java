package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/**
 * The delay between the channels from all tones together. The phase of one tone leaves open how
 * many periods it means; the one delay at which all phases agree is looked for.
 *
 * @param delay µs, positive if the right channel is late
 * @param seconds the same in seconds, to say which period each tone means; 0 if not known
 * @param isInverted whether the channels are of opposite polarity
 */
record PairDelay(Quantity delay, double seconds, boolean isInverted) {

    private static final Sentences SAID = Sentences.near(PairDelay.class);

    /** Heads stand straighter than this: a degree of angle on a narrow track of slow tape. */
    private static final double MOST_S = 450e-6;

    /** What unlike amplifiers turn the phase, radians (6 degrees), beside noise. */
    private static final double AMPLIFIERS = 0.105;

    /** Another delay is as good if its sum of squares is larger by less than this. */
    private static final double AS_GOOD = 9;

    /** Opposite polarity must explain the phases better by this. */
    private static final double PLAINLY = 25;

    /** Delays tried in each period of the highest tone. */
    private static final double STEPS = 16;

    /** Two delays nearer than this share of the highest tone's period are one. */
    private static final double ONE = 0.5;

    private record Try(double seconds, double squares, double standard) {

        boolean isPossible() {
            return Math.abs(seconds) <= MOST_S;
        }
    }

    /** The delay that fits all tones in which both channels are heard. */
    static PairDelay of(List<HeardTone> heard) {
        List<HeardTone> tones = heard.stream().filter(t -> t.phase() != null).toList();
        if (tones.isEmpty()) {
            return new PairDelay(Quantity.unknown(SAID.say("none-on-both")), 0, false);
        }
        List<Try> normal = minima(tones, 0);
        List<Try> turned = minima(tones, Math.PI);
        boolean isInverted =
                turned.get(0).squares() + PLAINLY < normal.get(0).squares()
                        || turned.get(0).isPossible() && !normal.get(0).isPossible();
        List<Try> tries = isInverted ? turned : normal;
        List<Try> good =
                tries.stream()
                        .filter(t -> t.squares() < tries.get(0).squares() + AS_GOOD)
                        .sorted(Comparator.comparingDouble(t -> Math.abs(t.seconds())))
                        .toList();
        return good.size() > 1
                ? new PairDelay(several(tones, good), 0, isInverted)
                : one(tries.get(0), tones.size(), isInverted);
    }

    private static PairDelay one(Try t, int tones, boolean isInverted) {
        double spread = tones > 2 ? Math.sqrt(t.squares() / (tones - 1)) : 1;
        // Few tones, or tones that agree by chance, do not make amplifiers alike.
        double standard = t.standard() * Math.max(0.25, spread);
        return new PairDelay(
                Quantity.known(1e6 * t.seconds(), "µs", 2e6 * standard), t.seconds(), isInverted);
    }

    private static Quantity several(List<HeardTone> tones, List<Try> good) {
        double lowest = tones.stream().mapToDouble(HeardTone::hz).min().orElse(0);
        return Quantity.unknown(
                SAID.say(
                        tones.size() == 1 ? "period-one" : "period-several",
                        lowest,
                        1e6 * good.get(0).seconds(),
                        1e6 * good.get(1).seconds()));
    }

    /** All delays at which the phases agree better than beside, the best first. */
    private static List<Try> minima(List<HeardTone> tones, double turn) {
        double highest = tones.stream().mapToDouble(HeardTone::hz).max().orElse(1);
        double step = 1 / (STEPS * highest);
        int half = (int) Math.ceil(MOST_S / step);
        List<Try> all = new ArrayList<>();
        double before = squares(tones, turn, -(half + 1) * step);
        double here = squares(tones, turn, -half * step);
        for (int i = -half; i <= half; i++) {
            double after = squares(tones, turn, (i + 1) * step);
            if (here <= before && here < after) {
                all.add(refined(tones, turn, i * step));
            }
            before = here;
            here = after;
        }
        if (all.isEmpty()) {
            all.add(refined(tones, turn, 0));
        }
        all.sort(Comparator.comparingDouble(Try::squares));
        List<Try> distinct = new ArrayList<>();
        for (Try t : all) {
            if (distinct.stream()
                    .noneMatch(d -> Math.abs(d.seconds() - t.seconds()) < ONE / highest)) {
                distinct.add(t);
            }
        }
        return distinct;
    }

    private static double squares(List<HeardTone> tones, double turn, double seconds) {
        double sum = 0;
        for (HeardTone t : tones) {
            double off = off(t, turn, seconds);
            sum += off * off * weight(t);
        }
        return sum;
    }

    /** Least squares about a delay that is nearly right. */
    private static Try refined(List<HeardTone> tones, double turn, double seconds) {
        double delay = seconds;
        double information = 0;
        for (int round = 0; round < 3; round++) {
            double slope = 0;
            information = 0;
            for (HeardTone t : tones) {
                double w = 2 * Math.PI * t.hz();
                slope += weight(t) * w * off(t, turn, delay);
                information += weight(t) * w * w;
            }
            delay -= slope / information;
        }
        return new Try(delay, squares(tones, turn, delay), 1 / Math.sqrt(information));
    }

    private static double off(HeardTone tone, double turn, double seconds) {
        return ToneReader.wrapped(
                tone.phase().radians() + 2 * Math.PI * tone.hz() * seconds + turn);
    }

    private static double weight(HeardTone tone) {
        double standard = Math.hypot(tone.phase().standard(), AMPLIFIERS);
        return 1 / (standard * standard);
    }

    /** The delay that a tone alone shows, µs, with the period that all tones together mean. */
    Quantity of(HeardTone tone) {
        if (tone.phase() == null) {
            return Quantity.unknown(SAID.say("not-on-both"));
        }
        if (!delay.isKnown()) {
            return delay;
        }
        double w = 2 * Math.PI * tone.hz();
        double off = off(tone, isInverted ? Math.PI : 0, seconds);
        return Quantity.known(1e6 * (seconds - off / w), "µs", 2e6 * tone.phase().standard() / w);
    }
}
