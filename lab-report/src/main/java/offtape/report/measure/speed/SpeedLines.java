package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.List;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.standard.SampleClock;
import offtape.core.text.Sentences;
import offtape.report.measure.line.FoundLine;
import offtape.report.measure.line.LineSearch;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedSpectrum;
import org.apache.commons.math3.stat.regression.SimpleRegression;

/** The spectrum of a speed deviation and the lines in it, steady or slowly moving. */
final class SpeedLines {

    private static final Sentences SAID = Sentences.near(SpeedLines.class);

    private static final double LOWEST_HZ = LineSearch.LOWEST_HZ;
    private static final double HIGHEST_HZ = LineSearch.HIGHEST_HZ;

    /** Bands end softly: so far their edges reach. */
    private static final double EDGES_HZ = 300;

    private static final int MOST = 12;
    private static final int POINTS = 360;

    /** Changes by a smaller share than this tell no reel. */
    private static final double WITH_THE_TAPE = 3e-4;

    private final double[] modulation;
    private final double rateHz;
    private final double[] peak;
    private final double binHz;

    /**
     * Transforms a deviation.
     *
     * @param deviation about its mean, percent, not changed later; the first ten minutes of a
     *     longer one are taken
     * @param rateHz its sample rate
     */
    SpeedLines(double[] deviation, double rateHz) {
        int most = (int) (LineSearch.LONGEST_S * rateHz);
        this.modulation =
                deviation.length > most ? LineSearch.beginning(deviation, most) : deviation;
        this.rateHz = rateHz;
        int n = RealFft.nextPowerOfTwo(2 * modulation.length);
        double[] windowed = new double[modulation.length];
        for (int i = 0; i < windowed.length; i++) {
            windowed[i] =
                    modulation[i]
                            * (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / windowed.length));
        }
        Spectrum spectrum = RealFft.ofSize(n).forward(windowed);
        this.binHz = spectrum.binHz(rateHz);
        int bins = (int) Math.min(spectrum.bins(), EDGES_HZ / binHz + 2);
        this.peak = new double[bins];
        for (int k = 0; k < bins; k++) {
            peak[k] = 2 * spectrum.magnitude(k) / (windowed.length / 2.0);
        }
    }

    /** How far another meter may read the same. */
    MeterDoubt meterDoubt() {
        return new MeterDoubt(peak, binHz);
    }

    /** Lines, largest first. */
    List<FoundLine> found() {
        return LineSearch.find(modulation, rateHz).stream().limit(MOST).toList();
    }

    /** Lines that were found, in the words of the results. */
    List<SpeedComponent> components(List<FoundLine> lines) {
        double drift = drift();
        return lines.stream().map(line -> component(line, drift)).toList();
    }

    /** How much faster the tape is at the end than at the beginning, as a share. */
    private double drift() {
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < modulation.length; i += 10) {
            line.addData(i, modulation[i]);
        }
        return line.getSlope() * modulation.length / 100;
    }

    private static SpeedComponent component(FoundLine line, double drift) {
        boolean tried = line.changeUncertainty() > 0;
        return new SpeedComponent(
                line.startHz(),
                line.peakPercent(),
                null,
                Math.hypot(line.hzUncertainty(), SampleClock.UNCERTAINTY * line.startHz()),
                line.peakUncertainty(),
                line.moves() ? line.endHz() : null,
                line.moves() ? 60 * line.changeHzPerS() : null,
                tried ? 60 * line.changeUncertainty() : null,
                line.moves() ? note(line, drift) : null);
    }

    private static String note(FoundLine line, double drift) {
        double change = line.endHz() / line.startHz() - 1;
        if (Math.abs(change) < 2 * Math.abs(drift) + WITH_THE_TAPE) {
            return SAID.say("moves-with-tape");
        }
        return change > 0 ? SAID.say("gets-faster") : SAID.say("gets-slower");
    }

    /** The spectrum for charts: the highest value in each of some hundred logarithmic bands. */
    SpeedSpectrum spectrum() {
        List<double[]> points = new ArrayList<>();
        double ratio = Math.pow(HIGHEST_HZ / LOWEST_HZ, 1.0 / POINTS);
        double low = LOWEST_HZ;
        while (low < HIGHEST_HZ) {
            double high = low * ratio;
            int from = (int) Math.ceil(low / binHz);
            int to = (int) Math.ceil(high / binHz);
            double[] best = null;
            for (int k = from; k < Math.min(to, peak.length); k++) {
                if (best == null || peak[k] > best[1]) {
                    best = new double[] {k * binHz, peak[k]};
                }
            }
            if (best != null) {
                points.add(best);
            }
            low = high;
        }
        return new SpeedSpectrum(
                points.stream().mapToDouble(p -> p[0]).toArray(),
                points.stream().mapToDouble(p -> p[1]).toArray());
    }
}
