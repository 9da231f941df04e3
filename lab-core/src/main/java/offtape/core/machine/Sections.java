package offtape.core.machine;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Minimum-phase filters as cascades of sections, by the bilinear transform with the stated
 * frequency in its exact place. Towards half the sample rate their shape differs from the analogue
 * filter's; the truth states the response of the sections themselves.
 */
final class Sections {

    private Sections() {}

    /** Butterworth high-pass, −3.01 dB at the edge. */
    static List<Section> highPass(double rateHz, double edgeHz, int order) {
        return butterworth(rateHz, edgeHz, order, true);
    }

    /** Butterworth low-pass, −3.01 dB at the edge; none if the edge is not below half the rate. */
    static List<Section> lowPass(double rateHz, double edgeHz, int order) {
        return edgeHz >= 0.499 * rateHz ? List.of() : butterworth(rateHz, edgeHz, order, false);
    }

    /**
     * A peak or dip: H(s) = (s² + s·A/Q + 1)/(s² + s/(A·Q) + 1), s in units of the centre, A² the
     * gain at the centre; 0 dB far from it.
     */
    static Section peak(double rateHz, double centreHz, double gainDb, double q) {
        double a = Math.pow(10, gainDb / 40);
        double k = Math.tan(Math.PI * centreHz / rateHz);
        return bilinear(rateHz, k, new double[] {1, a / q, 1}, new double[] {1, 1 / (a * q), 1});
    }

    /** Product of the sections' responses at a frequency in hertz. */
    static Complex response(List<Section> sections, double frequencyHz) {
        Complex product = Complex.ONE;
        for (Section section : sections) {
            product = product.multiply(section.response(frequencyHz));
        }
        return product;
    }

    /** All sections at work, in order. */
    static List<Section.Running> start(List<Section> sections) {
        return sections.stream().map(Section::start).toList();
    }

    private static List<Section> butterworth(
            double rateHz, double edgeHz, int order, boolean high) {
        double k = Math.tan(Math.PI * edgeHz / rateHz);
        List<Section> sections = new ArrayList<>();
        for (int pair = 0; pair < order / 2; pair++) {
            double damping = 2 * Math.sin(Math.PI * (2 * pair + 1) / (2.0 * order));
            double[] numerator = high ? new double[] {1, 0, 0} : new double[] {0, 0, 1};
            sections.add(bilinear(rateHz, k, numerator, new double[] {1, damping, 1}));
        }
        if (order % 2 == 1) {
            sections.add(firstOrder(rateHz, k, high));
        }
        return List.copyOf(sections);
    }

    private static Section firstOrder(double rateHz, double k, boolean high) {
        double a0 = 1 + k;
        double a1 = (k - 1) / a0;
        return high
                ? new Section(rateHz, 1 / a0, -1 / a0, 0, a1, 0)
                : new Section(rateHz, k / a0, k / a0, 0, a1, 0);
    }

    // Coefficients of s², s, 1; s = (1/k)·(1 − 1/z)/(1 + 1/z).
    private static Section bilinear(double rateHz, double k, double[] num, double[] den) {
        double kk = k * k;
        double a0 = den[0] + den[1] * k + den[2] * kk;
        return new Section(
                rateHz,
                (num[0] + num[1] * k + num[2] * kk) / a0,
                2 * (num[2] * kk - num[0]) / a0,
                (num[0] - num[1] * k + num[2] * kk) / a0,
                2 * (den[2] * kk - den[0]) / a0,
                (den[0] - den[1] * k + den[2] * kk) / a0);
    }
}
