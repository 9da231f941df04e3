package offtape.report.apply.model;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * How far a sound cancels another after the best common delay, a fraction of a frame, and the best
 * common gain of both channels.
 *
 * @param db 20·log of the rms of what is left over the rms of the truth
 * @param delayFrames by how much the made sound was late
 * @param gainDb gain that the made sound was brought to the truth's level with
 */
public record NullDepth(double db, double delayFrames, double gainDb) {

    private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;
    private static final int STEPS = 60;
    private static final double NOTHING_DB = -200;

    /**
     * The null of two sounds of one length.
     *
     * @param truth one array a channel
     * @param made one array a channel
     */
    public static NullDepth of(double[][] truth, double[][] made) {
        return new Search(truth, made).best();
    }

    /** The sounds as spectra. */
    private static final class Search {

        private final int size;
        private final double[] cross;
        private final double[] crossTurned;
        private double truthPower;
        private double madePower;

        Search(double[][] truth, double[][] made) {
            size = RealFft.nextPowerOfTwo(2 * truth[0].length);
            cross = new double[size / 2 + 1];
            crossTurned = new double[cross.length];
            RealFft fft = RealFft.ofSize(size);
            for (int c = 0; c < truth.length; c++) {
                Spectrum t = fft.forward(truth[c]);
                Spectrum m = fft.forward(made[c]);
                Spectrum product = t.timesConjugate(m);
                for (int k = 0; k < cross.length; k++) {
                    double twice = k == 0 || k == cross.length - 1 ? 1 : 2;
                    cross[k] += twice * product.re(k);
                    crossTurned[k] += twice * product.im(k);
                    truthPower += twice * t.power(k);
                    madePower += twice * m.power(k);
                }
            }
        }

        /** Σ truth · made, the made sound brought forward by so many frames. */
        private double along(double frames) {
            double sum = 0;
            double stepCos = Math.cos(2 * Math.PI * frames / size);
            double stepSin = Math.sin(2 * Math.PI * frames / size);
            double cos = 1;
            double sin = 0;
            for (int k = 0; k < cross.length; k++) {
                sum += cross[k] * cos + crossTurned[k] * sin;
                double next = cos * stepCos - sin * stepSin;
                sin = sin * stepCos + cos * stepSin;
                cos = next;
            }
            return sum;
        }

        private int wholeFrames() {
            double[] lags =
                    RealFft.ofSize(size)
                            .inverse(Spectrum.of(size, cross.clone(), crossTurned.clone()));
            int best = 0;
            for (int i = 0; i < size; i++) {
                best = lags[i] > lags[best] ? i : best;
            }
            return best > size / 2 ? best - size : best;
        }

        NullDepth best() {
            if (truthPower <= 0 || madePower <= 0) {
                return new NullDepth(truthPower == madePower ? NOTHING_DB : 0, 0, 0);
            }
            double middle = -wholeFrames();
            double low = middle - 1;
            double high = middle + 1;
            for (int i = 0; i < STEPS; i++) {
                double left = high - GOLDEN * (high - low);
                double right = low + GOLDEN * (high - low);
                if (along(left) > along(right)) {
                    high = right;
                } else {
                    low = left;
                }
            }
            double frames = (low + high) / 2;
            double gain = along(frames) / madePower;
            double left = Math.max(0, 1 - gain * along(frames) / truthPower);
            double db = Math.max(NOTHING_DB, 10 * Math.log10(left + 1e-20));
            return new NullDepth(db, frames, 20 * Math.log10(Math.max(gain, 1e-10)));
        }
    }
}
