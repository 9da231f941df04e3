package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.unit.Decibels;

/**
 * Level and third harmonic of a tone of known frequency. Flutter moves neither: the level is the
 * power of a band around the tone, and the harmonic is read on the tone's own phase.
 */
final class ToneMeter {

    private static final int ORDERS = 3;
    private static final int PIECES = 10;
    private static final double LEAST_DBFS = -200;
    private static final double LEAST_WHOLE = 0.4;

    /** A harmonic is told from this many standard deviations on. */
    private static final double CLEAR = 3;

    private final double frequencyHz;
    private final int sampleRateHz;
    private final Downconverter band;
    private final double edgeSeconds;

    ToneMeter(double frequencyHz, int sampleRateHz) {
        this.frequencyHz = frequencyHz;
        this.sampleRateHz = sampleRateHz;
        double pass = 5 + 0.01 * frequencyHz;
        // the 2nd harmonic and a constant part lie one frequency away
        double stop = Math.max(pass + 10, Math.min(1000, 0.9 * frequencyHz));
        this.band = Downconverter.of(pass, stop, sampleRateHz);
        // from the middle of the filters to their ends
        this.edgeSeconds = 3.5 / (stop - pass) + 0.002;
    }

    double frequencyHz() {
        return frequencyHz;
    }

    /** How much sound a reading takes. */
    double seconds() {
        return 2 * edgeSeconds + 0.45;
    }

    /** Reads each channel of a stretch. */
    List<ToneReading> read(double[][] sound) {
        double end = (double) sound[0].length / sampleRateHz - edgeSeconds;
        boolean harmonic = ORDERS * frequencyHz < 0.45 * sampleRateHz;
        List<List<Baseband>> orders =
                band.convert(
                        new MemoryAudio("return", sampleRateHz, sound),
                        edgeSeconds,
                        end,
                        PhaseLaw.steady(frequencyHz),
                        harmonic ? ORDERS : 1);
        List<ToneReading> readings = new ArrayList<>();
        for (int c = 0; c < sound.length; c++) {
            readings.add(
                    reading(orders.get(0).get(c), harmonic ? orders.get(ORDERS - 1).get(c) : null));
        }
        return readings;
    }

    private static ToneReading reading(Baseband tone, Baseband third) {
        boolean[] whole = WholeStretches.of(tone);
        double power = 0;
        int count = 0;
        for (int k = 0; k < whole.length; k++) {
            power += whole[k] ? tone.power(k) : 0;
            count += whole[k] ? 1 : 0;
        }
        if (count < LEAST_WHOLE * whole.length) {
            return new ToneReading(dbfs(tone.meanPower()), 0, null, null);
        }
        power /= count;
        double share = Math.min(1, inStep(tone, whole) / power);
        return third == null
                ? new ToneReading(dbfs(power), share, null, null)
                : withHarmonic(dbfs(power), share, power, harmonic(tone, third, whole));
    }

    private static ToneReading withHarmonic(double dbfs, double share, double power, double[] k3) {
        double ratio = 100 / Math.sqrt(power);
        if (k3[0] < CLEAR * k3[1]) {
            return new ToneReading(dbfs, share, null, ratio * (k3[0] + 2 * k3[1]));
        }
        double clean = Math.sqrt(Math.max(0, k3[0] * k3[0] - k3[1] * k3[1]));
        return new ToneReading(dbfs, share, ratio * clean, null);
    }

    // a sine of peak A has a modulus of A/2
    private static double dbfs(double power) {
        return Math.max(LEAST_DBFS, Decibels.ofAmplitude(2 * Math.sqrt(power)));
    }

    /** Mean product of neighbours: the tone's power, since noise does not keep step. */
    private static double inStep(Baseband z, boolean[] whole) {
        double re = 0;
        double im = 0;
        int count = 0;
        for (int k = 1; k < z.size(); k++) {
            if (whole[k] && whole[k - 1]) {
                re += z.re()[k] * z.re()[k - 1] + z.im()[k] * z.im()[k - 1];
                im += z.im()[k] * z.re()[k - 1] - z.re()[k] * z.im()[k - 1];
                count++;
            }
        }
        return count == 0 ? 0 : Math.hypot(re, im) / count;
    }

    /** Size of the harmonic on the tone's own phase, and its standard deviation by the pieces. */
    private static double[] harmonic(Baseband tone, Baseband third, boolean[] whole) {
        List<double[]> pieces = new ArrayList<>();
        int length = tone.size() / PIECES;
        for (int p = 0; p < PIECES; p++) {
            double[] sum = new double[2];
            int count = 0;
            for (int k = p * length; k < (p + 1) * length; k++) {
                if (whole[k]) {
                    double turn = -3 * Math.atan2(tone.im()[k], tone.re()[k]);
                    double c = Math.cos(turn);
                    double s = Math.sin(turn);
                    sum[0] += third.re()[k] * c - third.im()[k] * s;
                    sum[1] += third.re()[k] * s + third.im()[k] * c;
                    count++;
                }
            }
            if (count > length / 2) {
                pieces.add(new double[] {sum[0] / count, sum[1] / count});
            }
        }
        return spread(pieces);
    }

    /** Size of the mean and its standard deviation. */
    private static double[] spread(List<double[]> pieces) {
        int n = pieces.size();
        double re = pieces.stream().mapToDouble(p -> p[0]).sum() / n;
        double im = pieces.stream().mapToDouble(p -> p[1]).sum() / n;
        double scatter = 0;
        for (double[] p : pieces) {
            scatter += Math.pow(p[0] - re, 2) + Math.pow(p[1] - im, 2);
        }
        return new double[] {Math.hypot(re, im), Math.sqrt(scatter / (n * (n - 1.0)))};
    }
}
