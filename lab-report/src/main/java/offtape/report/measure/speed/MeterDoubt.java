package offtape.report.measure.speed;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import offtape.core.fault.Background;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;

/**
 * How far two meters may read the same deviation apart though both keep to the standard: it gives
 * the weighting at some frequencies and in tenths of a decibel, and bands by their ends. From the
 * spectrum of what was heard, since a line in the middle of a band is read alike by all.
 */
final class MeterDoubt {

    /** Half of the last digit of the weighting's table, as a share of an amplitude. */
    private static final double ROUNDING = 0.05 * Math.log(10) / 20;

    private static final double LOWEST_HZ = 0.05;

    private final double[] peak;
    private final double binHz;
    private final Map<FlutterBand, Double> shares = new EnumMap<>(FlutterBand.class);

    /**
     * Takes a spectrum.
     *
     * @param peak amplitude in each bin, in any unit
     */
    MeterDoubt(double[] peak, double binHz) {
        this.peak = peak;
        this.binHz = binHz;
        List<FlutterBand> bands = List.of(FlutterBand.values());
        List<Double> found = Background.each(bands, this::find);
        bands.forEach(band -> shares.put(band, found.get(band.ordinal())));
    }

    /**
     * Expanded uncertainty (k = 2) of a reading in a band, as a share of it. A meter has this
     * weighting or that, each as likely as the other; its edges are anything from blunt to sharp.
     */
    double share(FlutterBand band) {
        return shares.get(band);
    }

    private double find(FlutterBand band) {
        double apart = apart(band);
        return band == FlutterBand.WEIGHTED
                ? Math.hypot(2 / Math.sqrt(2) * apart, rounding())
                : 2 / Math.sqrt(3) * apart;
    }

    /** The farther one of a sharper and a blunter meter. */
    private double apart(FlutterBand band) {
        return Math.max(apart(band, band::sharpGain), apart(band, band::bluntGain));
    }

    /** The two ends of a band are each by themselves: one does not make up for the other. */
    private double apart(FlutterBand band, DoubleUnaryOperator other) {
        double ours = 0;
        double[] more = new double[2];
        for (int k = first(); k < peak.length; k++) {
            double hz = k * binHz;
            double power = peak[k] * peak[k];
            double gain = Math.pow(band.gain(hz), 2);
            ours += power * gain;
            more[hz < band.middleHz() ? 0 : 1] +=
                    power * (Math.pow(other.applyAsDouble(hz), 2) - gain);
        }
        return ours > 0 ? Math.hypot(more[0], more[1]) / (2 * ours) : 0;
    }

    /** Rows of the table are rounded each by itself: what lies at many of them errs less. */
    private double rounding() {
        double[] rows = new double[Iec60386.weightingRows() + 1];
        double all = 0;
        for (int k = first(); k < peak.length; k++) {
            double power = Math.pow(peak[k] * FlutterBand.WEIGHTED.gain(k * binHz), 2);
            double place = Iec60386.weightingRow(k * binHz);
            int row = (int) place;
            rows[row] += power * (1 - (place - row));
            rows[row + 1] += power * (place - row);
            all += power;
        }
        double squares = 0;
        for (double row : rows) {
            squares += all > 0 ? row * row / (all * all) : 0;
        }
        return 2 * ROUNDING * Math.sqrt(squares / 3);
    }

    private int first() {
        return (int) Math.ceil(LOWEST_HZ / binHz);
    }
}
