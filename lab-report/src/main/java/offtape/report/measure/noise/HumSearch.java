package offtape.report.measure.noise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.dsp.PowerDensity;
import offtape.report.result.HumLine;

/** Mains lines in recorded silence: at multiples of 50 or 60 Hz, whichever explains more. */
final class HumSearch {

    private static final int MULTIPLES = 12;

    /** A line stands this far over the noise beside it, as a ratio of densities. */
    private static final double STANDS_OUT = 20;

    private HumSearch() {}

    /**
     * Finds the lines.
     *
     * @param silence samples
     * @param referencePower mean square of the reference tone on the channel
     */
    static List<HumLine> find(double[] silence, double sampleRateHz, double referencePower) {
        int longest = Integer.highestOneBit((int) (4 * sampleRateHz));
        PowerDensity fine = PowerDensity.of(silence, sampleRateHz, longest);
        List<HumLine> fifty = lines(fine, 50, referencePower);
        List<HumLine> sixty = lines(fine, 60, referencePower);
        return power(fifty) >= power(sixty) ? fifty : sixty;
    }

    private static double power(List<HumLine> lines) {
        return lines.stream().mapToDouble(l -> Math.pow(10, l.levelDb() / 10)).sum();
    }

    private static List<HumLine> lines(PowerDensity density, double mainsHz, double reference) {
        List<HumLine> lines = new ArrayList<>();
        for (int m = 1; m <= MULTIPLES; m++) {
            double hz = m * mainsHz;
            double reach = 2.5 * density.binHz();
            double beside = beside(density, hz);
            double power = density.power(hz - reach, hz + reach, f -> 1) - 2 * reach * beside;
            if (beside > 0 && power / (2 * reach) > STANDS_OUT * beside) {
                lines.add(new HumLine(hz, 10 * Math.log10(power / reference)));
            }
        }
        return lines;
    }

    /** Median density between 4 and 12 Hz to either side. */
    private static double beside(PowerDensity density, double hz) {
        double[] values = new double[density.bins()];
        int count = 0;
        for (int k = 0; k < density.bins(); k++) {
            double distance = Math.abs(k * density.binHz() - hz);
            if (distance > 4 && distance < 12) {
                values[count++] = density.at(k);
            }
        }
        double[] sorted = Arrays.copyOf(values, count);
        Arrays.sort(sorted);
        return count == 0 ? 0 : sorted[count / 2];
    }
}
