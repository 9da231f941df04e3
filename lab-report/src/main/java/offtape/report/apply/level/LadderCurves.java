package offtape.report.apply.level;

import java.math.BigDecimal;
import java.math.MathContext;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;

/** Figures between the steps of a ladder, off its smooth curves. */
final class LadderCurves {

    private static final Sentences SAID = Sentences.near(LadderCurves.class);

    /** K3 rises by some 2 dB per dB; less than this would give a level no bound. */
    private static final double LEAST_SLOPE = 0.3;

    private static final int DIGITS = 3;

    private static final double DB_PER_NEPER = 20 / Math.log(10);

    private final Distortion ladder;

    LadderCurves(Distortion ladder) {
        this.ladder = ladder;
    }

    /** Record level at which K3 first reaches a percentage, dB re reference. */
    Quantity recordLevel(double percent) {
        if (percent == 1) {
            return ladder.levelAtK3OnePercent();
        }
        if (percent == 3) {
            return ladder.levelAtK3ThreePercent();
        }
        FittedCurve k3 = ladder.k3Curve();
        if (k3 == null || k3.value().length < 2) {
            Quantity other = ladder.levelAtK3OnePercent();
            return Quantity.unknown(other.isKnown() ? SAID.say("few-steps-k3") : other.reason());
        }
        for (int i = 1; i < k3.value().length; i++) {
            if (k3.value()[i - 1] <= percent && k3.value()[i] >= percent) {
                return crossing(k3, i, percent);
            }
        }
        return missed(k3, percent);
    }

    private static Quantity crossing(FittedCurve k3, int i, double percent) {
        double low = k3.value()[i - 1];
        double high = k3.value()[i];
        double[] at = k3.recordLevelDb();
        double rise = Math.log(high / low);
        double part = rise > 0 ? Math.log(percent / low) / rise : 0;
        double slope = Math.max(LEAST_SLOPE, DB_PER_NEPER * rise / (at[i] - at[i - 1]));
        double share = Math.max(k3.uncertainty()[i - 1] / low, k3.uncertainty()[i] / high);
        return Quantity.known(
                at[i - 1] + part * (at[i] - at[i - 1]), "dB", DB_PER_NEPER * share / slope);
    }

    private static Quantity missed(FittedCurve k3, double percent) {
        int last = k3.value().length - 1;
        boolean below = k3.value()[0] < percent;
        return Quantity.unknown(
                SAID.say(
                        below ? "k3-stays-under" : "k3-is-above",
                        plain(percent),
                        k3.recordLevelDb()[below ? last : 0]));
    }

    private static String plain(double percent) {
        return new BigDecimal(percent)
                .round(new MathContext(DIGITS))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Replay level of a record level, dB; unknown with that, or beyond the curve. */
    Quantity replayLevel(Quantity record) {
        if (!record.isKnown()) {
            return record;
        }
        FittedCurve replay = ladder.replayCurve();
        Double level = replay == null ? null : at(replay, replay.value(), record.value());
        return level == null
                ? Quantity.unknown(SAID.say("few-steps-replay"))
                : Quantity.known(
                        level,
                        "dB",
                        Math.hypot(
                                record.uncertainty(),
                                at(replay, replay.uncertainty(), record.value())));
    }

    /** A value of a curve between its points, or null beyond them. */
    static Double at(FittedCurve curve, double[] values, double levelDb) {
        double[] x = curve.recordLevelDb();
        for (int i = 1; i < x.length; i++) {
            if (levelDb >= x[i - 1] && levelDb <= x[i]) {
                double part = (levelDb - x[i - 1]) / (x[i] - x[i - 1]);
                return values[i - 1] + part * (values[i] - values[i - 1]);
            }
        }
        return null;
    }
}
