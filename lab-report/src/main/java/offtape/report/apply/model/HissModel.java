package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import offtape.core.model.SteadyLines;
import offtape.core.standard.Iec61260;
import offtape.report.result.HumLine;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;

/**
 * Hiss and hum of one channel.
 *
 * @param densityDb power of the hiss in a hertz, dB re the channel's reference tone, over frequency
 * @param hum mains lines
 */
record HissModel(PointCurve densityDb, List<HumLine> hum) {

    /** A band of which hum is this share or more tells no hiss. */
    private static final double MOST_HUM = 0.7;

    /** The model of a channel's noise, or null if no spectrum is known. */
    static HissModel of(Noise noise) {
        NoiseSpectrum spectrum = noise.spectrum();
        if (spectrum == null || spectrum.frequencyHz().length < 2) {
            return null;
        }
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < spectrum.frequencyHz().length; i++) {
            double centre = spectrum.frequencyHz()[i];
            double low = Iec61260.lowerEdgeHz(centre, 3);
            double high = Iec61260.upperEdgeHz(centre, 3);
            double power = Math.pow(10, spectrum.levelDb()[i] / 10);
            double hiss = power - humPower(noise.hum(), low, high);
            if (hiss > (1 - MOST_HUM) * power) {
                points.add(new double[] {centre, 10 * Math.log10(hiss / (high - low))});
            }
        }
        return points.size() < 2 ? null : new HissModel(curve(points), noise.hum());
    }

    private static double humPower(List<HumLine> hum, double low, double high) {
        return hum.stream()
                .filter(h -> h.frequencyHz() >= low && h.frequencyHz() < high)
                .mapToDouble(h -> Math.pow(10, h.levelDb() / 10))
                .sum();
    }

    private static PointCurve curve(List<double[]> points) {
        return new PointCurve(
                points.stream().mapToDouble(p -> p[0]).toArray(),
                points.stream().mapToDouble(p -> p[1]).toArray());
    }

    /**
     * Density at a frequency, dB; held beyond the ends, since noise does not end where bands do.
     */
    double densityDb(double hz) {
        return densityDb.held(hz);
    }

    /**
     * The hum.
     *
     * @param referencePeak peak of the reference tone as it returns
     */
    SteadyLines lines(double referencePeak, long seed) {
        return SteadyLines.drawn(
                hum.stream().mapToDouble(HumLine::frequencyHz).toArray(),
                hum.stream()
                        .mapToDouble(h -> referencePeak * Math.pow(10, h.levelDb() / 20))
                        .toArray(),
                seed);
    }
}
