package offtape.report.apply.model;

import java.util.Set;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/**
 * Impulse responses of a model at a sample rate.
 *
 * @param taps by receiving and by sounding channel, null for no leak
 * @param lead index of time zero
 */
record ModelFilters(double[][][] taps, int lead) {

    private static final double SECONDS = 1.2;

    /** No tape carries a constant: under this frequency the response falls to nothing. */
    private static final double CARRIED_HZ = 4;

    private static final double LEAD_SHARE = 0.25;

    static ModelFilters of(MachineModel model, int rateHz, Set<ModelPart> parts) {
        int size = RealFft.nextPowerOfTwo((int) (SECONDS * rateHz));
        int lead = (int) (LEAD_SHARE * size);
        double[][][] taps = new double[2][2][];
        for (int into = 0; into < 2; into++) {
            for (int from = 0; from < 2; from++) {
                taps[into][from] = taps(model, into, from, rateHz, size, lead, parts);
            }
        }
        return new ModelFilters(taps, lead);
    }

    private static double[] taps(
            MachineModel model,
            int into,
            int from,
            int rateHz,
            int size,
            int lead,
            Set<ModelPart> parts) {
        LeakModel leak = model.leaks()[into];
        if (into != from && (leak == null || !parts.contains(ModelPart.CROSSTALK))) {
            return null;
        }
        boolean response = parts.contains(ModelPart.RESPONSE);
        double[] re = new double[size / 2 + 1];
        double[] im = new double[re.length];
        for (int k = 1; k < re.length; k++) {
            double hz = (double) k * rateHz / size;
            double gain = response ? model.channels()[into].gain(hz) * carried(hz) : 1;
            double phase = response ? model.channels()[from].phaseAt(hz) : 0;
            if (into != from) {
                gain *= Math.pow(10, leak.levelDb().held(hz) / 20);
                phase += leak.phase().held(hz);
            }
            double turned = phase - 2 * Math.PI * k * lead / size;
            re[k] = gain * Math.cos(turned);
            im[k] = k == re.length - 1 ? 0 : gain * Math.sin(turned);
        }
        re[0] = response ? 0 : into == from ? 1 : re[1];
        double sign = response && model.inverted() ? -1 : 1;
        return faded(RealFft.ofSize(size).inverse(Spectrum.of(size, re, im)), lead, sign);
    }

    private static double carried(double hz) {
        return hz >= CARRIED_HZ ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * hz / CARRIED_HZ);
    }

    private static double[] faded(double[] taps, int lead, double sign) {
        int tail = taps.length - lead;
        for (int i = 0; i < taps.length; i++) {
            double place = i < lead ? (double) (lead - i) / lead : (double) (i - lead) / tail;
            double fade = Math.min(1, Math.max(0, 2 * place - 1));
            taps[i] *= sign * (0.5 + 0.5 * Math.cos(Math.PI * fade));
        }
        return taps;
    }
}
