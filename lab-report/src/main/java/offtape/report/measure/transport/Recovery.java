package offtape.report.measure.transport;

import java.util.ArrayList;
import java.util.List;
import offtape.core.standard.FlutterBand;
import offtape.report.measure.line.FoundLine;
import offtape.report.result.RateBand;

/**
 * Where the transport's deviation is recovered, and what the recovered part means for a reading.
 */
final class Recovery {

    /** Share of the power that has to come through for a rate to count as recovered. */
    private static final double RECOVERED = 0.9;

    /**
     * A line of this peak must stand out of the undone noise for a rate to count as recovered,
     * percent, even where the transport is still.
     */
    private static final double MATTERS_PERCENT = 0.001;

    private static final double HIGHEST_HZ = 200;
    private static final double READ_TO_HZ = 260;
    private static final double STEPS_A_WIDTH = 4;

    /** What a density between the comb's zeros may be out by at them, as a share. */
    private static final double DENSITY_ERROR = 0.3;

    private final CombDoubt doubt;
    private final List<UndoneLine> undone;
    private final List<FoundLine> heard;
    private final double topHz;
    private final double step;
    private final boolean[] recovered;

    /**
     * A recovery.
     *
     * @param doubt how far the comb is undone
     * @param undone lines that were undone one by one
     * @param heard lines of the return
     * @param bandHz fastest change that the tone shows
     */
    Recovery(CombDoubt doubt, List<UndoneLine> undone, List<FoundLine> heard, double bandHz) {
        this.doubt = doubt;
        this.undone = undone;
        this.heard = heard;
        this.topHz = Math.min(READ_TO_HZ, bandHz);
        this.step = 1 / (STEPS_A_WIDTH * doubt.seconds());
        this.recovered = new boolean[(int) (Math.min(HIGHEST_HZ, bandHz) / step)];
        for (int i = 0; i < recovered.length; i++) {
            recovered[i] = isRecovered((i + 0.5) * step);
        }
    }

    private boolean isRecovered(double hz) {
        double power = doubt.comb().power(hz);
        double least = MATTERS_PERCENT * MATTERS_PERCENT / 2 * doubt.seconds();
        double density = Math.max(least, doubt.density().applyAsDouble(hz));
        double spoilt =
                doubt.finite()
                        + doubt.comb().variance(hz)
                        + doubt.noise().applyAsDouble(hz) / density;
        return power > RECOVERED * (power + spoilt);
    }

    /** The recovered bands up to 200 Hz. */
    List<RateBand> bands() {
        List<RateBand> bands = new ArrayList<>();
        int start = -1;
        for (int i = 0; i <= recovered.length; i++) {
            boolean in = i < recovered.length && recovered[i];
            if (in && start < 0) {
                start = i;
            } else if (!in && start >= 0) {
                bands.add(new RateBand(start * step, i * step));
                start = -1;
            }
        }
        return bands;
    }

    /** Whether a rate lies in a recovered band. */
    boolean holds(double hz) {
        int i = (int) (hz / step);
        return i >= 0 && i < recovered.length && recovered[i];
    }

    /**
     * What a reading of mean square lacks, and how well it is known; squared percent.
     *
     * @param lost power of random motion that did not come through, to be added
     * @param deviation standard deviation of the mean square after that, but for the delay's part
     * @param byDelay standard deviation that the delay's uncertainty makes
     * @param share share of the power in recovered bands, 0 to 1
     */
    record Lack(double lost, double deviation, double byDelay, double share) {}

    /** The lack of a band's reading. */
    Lack of(FlutterBand band) {
        double lost = 0;
        double scatter = 0;
        double slope = 0;
        double inside = 0;
        double whole = 0;
        for (double f = step / 2; f < topHz; f += step) {
            double weight = band.gain(f) * band.gain(f) * step;
            double density = doubt.density().applyAsDouble(f);
            double gain = doubt.gain(f);
            double seen = gain * density;
            double unseen = density - seen;
            lost += weight * unseen;
            scatter += weight * weight / step * (2 * seen * unseen + unseen * unseen);
            slope += weight * density * doubt.comb().slope(f, doubt.all(f));
            whole += weight * density;
            inside += holds(f) ? weight * density : 0;
        }
        for (UndoneLine line : undone) {
            double f = line.heard().middleHz();
            double power = band.gain(f) * band.gain(f) * line.peak() * line.peak() / 2;
            slope += power * doubt.comb().slope(f, doubt.all(f));
            whole += power;
            inside += power;
        }
        for (FoundLine line : heard) {
            if (undone.stream().noneMatch(l -> l.heard().equals(line))) {
                whole += hidden(line, band);
            }
        }
        double deviation = Math.hypot(Math.sqrt(scatter / doubt.seconds()), DENSITY_ERROR * lost);
        double byDelay = Math.abs(slope) * doubt.comb().sigmaSeconds();
        return new Lack(lost, deviation, byDelay, whole > 0 ? inside / whole : 1);
    }

    /** Power that a line may have which is heard too faintly to be undone. */
    private double hidden(FoundLine line, FlutterBand band) {
        double f = line.middleHz();
        double gain = doubt.comb().power(f) + doubt.all(f);
        double weight = band.gain(f) * band.gain(f);
        return weight * line.peakPercent() * line.peakPercent() / 2 / gain;
    }
}
