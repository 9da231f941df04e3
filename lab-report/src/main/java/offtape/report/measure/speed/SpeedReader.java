package offtape.report.measure.speed;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import offtape.core.fault.Background;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.standard.RunningFilter;
import offtape.core.standard.TwoSigma;
import offtape.report.measure.line.LineSearch;
import offtape.report.result.SpeedReadings;
import offtape.report.result.SpeedSpectrum;
import offtape.report.result.SpeedTrace;

/** Takes a deviation as it comes and keeps what its readings need: a bounded amount. */
public final class SpeedReader {

    /** The lines of the spectrum come from no more than this much of the beginning. */
    static final double LINES_S = LineSearch.LONGEST_S;

    private static final List<FlutterBand> BANDS = List.of(FlutterBand.values());
    private static final double STRETCH_S = 0.05;
    private static final int MOST_STRETCHES = 1200;

    private final double rateHz;
    private final Map<FlutterBand, RunningFilter> bands = new EnumMap<>(FlutterBand.class);
    private final Map<FlutterBand, SettledRms> rms = new EnumMap<>(FlutterBand.class);
    private final PeakReading weightedPeak;
    private final PeakReading unweightedPeak;
    private final OtherDetectors othersWeighted;
    private final OtherDetectors othersUnweighted;
    private final TwoSigma twoSigma = new TwoSigma();
    private final HalfSeconds halfSeconds;
    private final Extremes trace;
    private final Drift drift;
    private final MeanDeviation mean;
    private final double[] beginning;
    private int begun;

    /**
     * What the filters see as zero: the mean of the first values, so that they start in the middle.
     */
    private double offset = Double.NaN;

    /**
     * Starts a reading.
     *
     * @param meter for the rate of the values
     * @param samples how many values there will be
     */
    public SpeedReader(Iec60386 meter, long samples) {
        this.rateHz = meter.sampleRateHz();
        List<RunningFilter> designed = Background.each(BANDS, meter::band);
        for (FlutterBand band : BANDS) {
            bands.put(band, designed.get(band.ordinal()));
            rms.put(band, new SettledRms(meter));
        }
        halfSeconds = new HalfSeconds(rateHz);
        rms.put(FlutterBand.WEIGHTED, new SettledRms(meter, this::weighted));
        weightedPeak = new PeakReading(meter, halfSeconds::reading);
        unweightedPeak = new PeakReading(meter);
        othersWeighted = new OtherDetectors(meter);
        othersUnweighted = new OtherDetectors(meter);
        trace = new Extremes(Math.round(STRETCH_S * rateHz), MOST_STRETCHES);
        drift = new Drift(rateHz);
        mean = new MeanDeviation(samples);
        beginning = new double[(int) Math.min(samples, (long) (LINES_S * rateHz))];
    }

    /** Takes the next values, percent. */
    public void next(double[] percent) {
        if (percent.length == 0) {
            return;
        }
        if (Double.isNaN(offset)) {
            offset = Arrays.stream(percent).average().orElseThrow();
        }
        double[] x = new double[percent.length];
        Arrays.setAll(x, k -> percent[k] - offset);
        mean.next(x);
        drift.next(x);
        int some = Math.min(x.length, beginning.length - begun);
        System.arraycopy(x, 0, beginning, begun, some);
        begun += some;
        // No band touches what another's reading is kept in.
        Background.each(BANDS, band -> filtered(band, bands.get(band).next(x)));
    }

    /** After the last value. */
    public void end() {
        Background.each(BANDS, band -> filtered(band, bands.get(band).rest()));
        weightedPeak.end();
        unweightedPeak.end();
        othersWeighted.end();
        othersUnweighted.end();
    }

    private FlutterBand filtered(FlutterBand band, double[] x) {
        rms.get(band).next(x);
        switch (band) {
            case WEIGHTED -> {
                weightedPeak.next(x);
                othersWeighted.next(x);
            }
            case UNWEIGHTED -> {
                unweightedPeak.next(x);
                othersUnweighted.next(x);
            }
            case CHARTED -> Arrays.stream(x).forEach(trace::add);
            default -> {
                // read as rms alone
            }
        }
        return band;
    }

    private void weighted(double[] settled) {
        twoSigma.add(settled);
        halfSeconds.weighted(settled);
    }

    double mean() {
        return offset + mean.value();
    }

    /** Expanded uncertainty of the mean but for the recorder's clock. */
    double meanUncertainty() {
        return mean.uncertainty();
    }

    /** Drift, percent; 0 for less than ten seconds. */
    public double drift() {
        return drift.reach();
    }

    /** How far wow may have moved the drift, after {@link #drift}. */
    double driftDoubt() {
        return drift.doubt();
    }

    /** Root mean square of a band where it has settled, percent. */
    public double rms(FlutterBand band) {
        return rms.get(band).value();
    }

    /** Highest weighted quasi-peak reading, percent. */
    public double weightedPeak() {
        return weightedPeak.highest();
    }

    /** Highest unweighted quasi-peak reading, percent. */
    public double unweightedPeak() {
        return unweightedPeak.highest();
    }

    /** How far other detectors read the weighted peak from ours, a share of it. */
    double weightedPeakApart() {
        return othersWeighted.apart(weightedPeak());
    }

    /** How far they read the unweighted one from ours. */
    double unweightedPeakApart() {
        return othersUnweighted.apart(unweightedPeak());
    }

    /** The two-sigma statistic of the weighted deviation, percent. */
    public double twoSigma() {
        return twoSigma.value();
    }

    HalfSeconds halfSeconds() {
        return halfSeconds;
    }

    SpeedReadings readings() {
        return halfSeconds.readings();
    }

    /** The lines of the beginning, or of all of a tone that is shorter. */
    SpeedLines lines() {
        return new SpeedLines(modulation(), rateHz);
    }

    /** The spectrum of the beginning, or of all of a tone that is shorter. */
    public SpeedSpectrum spectrum() {
        return lines().spectrum();
    }

    /** The beginning about its own mean, percent. */
    double[] modulation() {
        double middle = Arrays.stream(beginning, 0, begun).average().orElse(0);
        double[] modulation = new double[begun];
        Arrays.setAll(modulation, k -> beginning[k] - middle);
        return modulation;
    }

    /** The deviation from the mean over time, up to 200 Hz. */
    public SpeedTrace trace() {
        double middle = mean.value();
        return new SpeedTrace(
                Arrays.stream(trace.middles()).map(k -> k / rateHz).toArray(),
                Arrays.stream(trace.lowest()).map(v -> v - middle).toArray(),
                Arrays.stream(trace.highest()).map(v -> v - middle).toArray());
    }
}
