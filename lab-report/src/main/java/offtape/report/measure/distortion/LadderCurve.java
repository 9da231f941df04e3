package offtape.report.measure.distortion;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import offtape.core.unit.Quantity;
import offtape.report.result.LadderStep;

/** The figures read off a ladder: the levels at which distortion or compression reach a value. */
final class LadderCurve {

    /** A ladder at or above this frequency tells the saturation output level. */
    private static final double HIGH_HZ = 6000;

    /** Room for what interpolation between steps can miss, dB, k = 2. */
    private static final double OWN_UNCERTAINTY_DB = 0.03;

    private final List<LadderStep> steps;
    private final double frequencyHz;

    /**
     * The curve of one channel.
     *
     * @param steps in order of record level
     */
    LadderCurve(List<LadderStep> steps, double frequencyHz) {
        this.steps = steps;
        this.frequencyHz = frequencyHz;
    }

    /** Record level at which K3 reaches a percentage, dB re reference. */
    Quantity levelAtK3(double percent) {
        List<LadderStep> clear = clear();
        if (clear.size() < 2) {
            return Quantity.unknown(k3Unknown());
        }
        double[] x = column(clear, LadderStep::recordLevelDb);
        double[] y = column(clear, s -> 20 * Math.log10(s.k3Percent()));
        double target = 20 * Math.log10(percent);
        Crossing crossing = Crossing.rising(x, y, target);
        if (crossing == null) {
            return Quantity.unknown(missed("K3", percent + " %", y[0] < target));
        }
        double floor = clear.get(crossing.index()).k3FloorPercent() / percent;
        double uncertaintyDb = 8.7 * floor + 0.1;
        double slope = Math.max(0.5, crossing.slope());
        return Quantity.known(
                crossing.x(), "dB", Math.hypot(uncertaintyDb / slope, OWN_UNCERTAINTY_DB));
    }

    private List<LadderStep> clear() {
        return steps.stream().filter(LadderStep::k3StandsOut).toList();
    }

    private String k3Unknown() {
        boolean none = steps.stream().allMatch(s -> s.k3Percent() == null);
        return none
                ? "The third harmonic lies above the band of this recording."
                : "The third harmonic stays under the noise at every level of the ladder.";
    }

    private String missed(String what, String target, boolean below) {
        String ends = below ? "stays under " + target + " up to " : "is above " + target + " at ";
        double level = steps.get(below ? steps.size() - 1 : 0).recordLevelDb();
        String end = below ? ", the top of the ladder." : ", the bottom of the ladder.";
        return String.format(Locale.ROOT, "%s %s%.0f dB%s", what, ends, level, end);
    }

    /** Record level at which compression reaches a value in dB, dB re reference. */
    Quantity levelAtCompression(double db) {
        List<LadderStep> heard = steps.stream().filter(s -> s.compressionDb() != null).toList();
        if (heard.size() < 2) {
            return Quantity.unknown("Too few steps of the ladder were heard.");
        }
        double[] x = column(heard, LadderStep::recordLevelDb);
        double[] y = column(heard, LadderStep::compressionDb);
        Crossing crossing = Crossing.rising(x, y, db);
        if (crossing == null) {
            return Quantity.unknown(missed("Compression", db + " dB", y[0] < db));
        }
        return Quantity.known(
                crossing.x(), "dB", Math.hypot(0.02 / crossing.slope(), OWN_UNCERTAINTY_DB));
    }

    /** Replay level at which K3 reaches 3 %, dB. */
    Quantity maximumOutputLevel() {
        Quantity record = levelAtK3(3);
        if (!record.isKnown()) {
            return record;
        }
        List<LadderStep> heard = steps.stream().filter(s -> s.replayLevelDb() != null).toList();
        double replay =
                Crossing.valueAt(
                        column(heard, LadderStep::recordLevelDb),
                        column(heard, LadderStep::replayLevelDb),
                        record.value());
        return Quantity.known(replay, "dB", record.uncertainty());
    }

    /** Highest replay level of a high-frequency ladder, dB. */
    Quantity saturationOutputLevel() {
        if (frequencyHz < HIGH_HZ) {
            return Quantity.unknown("Saturation is read from the ladder of the highs.");
        }
        double[] replay =
                column(
                        steps.stream().filter(s -> s.replayLevelDb() != null).toList(),
                        LadderStep::replayLevelDb);
        int top = 0;
        for (int i = 0; i < replay.length; i++) {
            top = replay[i] > replay[top] ? i : top;
        }
        if (replay.length == 0) {
            return Quantity.unknown("No step of this ladder was heard.");
        }
        boolean stillRising =
                top == replay.length - 1 && top > 0 && replay[top] > replay[top - 1] + 0.3;
        return stillRising
                ? Quantity.unknown("The replay level still rises at the top of the ladder.")
                : Quantity.known(replay[top], "dB", 0.1);
    }

    private static double[] column(List<LadderStep> steps, Function<LadderStep, Double> value) {
        return steps.stream().mapToDouble(value::apply).toArray();
    }
}
