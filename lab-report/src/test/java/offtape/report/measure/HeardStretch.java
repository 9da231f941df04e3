package offtape.report.measure;

import java.util.Arrays;
import offtape.core.dsp.LowPass;
import offtape.core.machine.MachineRun;
import offtape.core.standard.FlutterBand;
import offtape.core.standard.Iec60386;
import offtape.core.standard.RunningFilter;
import offtape.core.standard.Settled;
import offtape.core.standard.TwoSigma;

/**
 * What a perfect demodulator would have handed to the meter over the stretch of tone that was read,
 * and what the meter makes of that: the truth about readings that belong to a stretch.
 */
final class HeardStretch {

    private static final double RATE_HZ = 1000;

    /** The tape may vibrate faster than the meter sees: that must not fold down. */
    private static final int FINER = 4;

    private static final double PASS_HZ = 300;

    private final double[] percent;
    private final double mean;
    private final DrawnMeter meter;

    /**
     * The true deviation of a return.
     *
     * @param fromSeconds where the stretch begins in the recording
     * @param seconds how long it is
     * @param meter what it is read with
     */
    HeardStretch(MachineRun run, double fromSeconds, double seconds, DrawnMeter meter) {
        this.meter = meter;
        LowPass filter = LowPass.design(PASS_HZ, RATE_HZ - PASS_HZ, 80, FINER * RATE_HZ);
        percent = new double[(int) (seconds * RATE_HZ)];
        double[] fine = new double[FINER * percent.length + 2 * filter.half()];
        for (int i = 0; i < fine.length; i++) {
            double at = fromSeconds + (i - filter.half()) / (FINER * RATE_HZ);
            fine[i] = 100 * run.timeMap().returnDeviation(at);
        }
        filter.thin(fine, FINER, percent, 0, percent.length);
        mean = Arrays.stream(percent).average().orElseThrow();
    }

    /** Root mean square in a band. */
    double rms(FlutterBand band) {
        return Math.sqrt(Arrays.stream(settled(band)).map(v -> v * v).average().orElseThrow());
    }

    /** Quasi-peak reading of a band, the highest. */
    double peak(FlutterBand band) {
        double[] reading = meter.quasiPeak(filtered(band), RATE_HZ);
        return Arrays.stream(kept(reading)).max().orElseThrow();
    }

    /** Weighted value exceeded 4.55 % of the time. */
    double twoSigma() {
        TwoSigma statistic = new TwoSigma();
        statistic.add(settled(FlutterBand.WEIGHTED));
        return statistic.value();
    }

    private double[] settled(FlutterBand band) {
        return kept(filtered(band));
    }

    private double[] filtered(FlutterBand band) {
        double[] x = Arrays.stream(percent).map(p -> p - mean).toArray();
        double[] ours = all(Iec60386.atRate(RATE_HZ).band(band), x);
        return meter.refiltered(band, ours, RATE_HZ);
    }

    private static double[] kept(double[] x) {
        Settled settled = Iec60386.atRate(RATE_HZ).settled();
        return settled.next(x);
    }

    private static double[] all(RunningFilter filter, double[] x) {
        double[] first = filter.next(x);
        double[] rest = filter.rest();
        double[] both = Arrays.copyOf(first, first.length + rest.length);
        System.arraycopy(rest, 0, both, first.length, rest.length);
        return both;
    }
}
