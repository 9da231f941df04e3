package offtape.report.measure.distortion;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.Complex;
import offtape.report.measure.tone.OrderSpectrum;

/**
 * A tone with lines of which each is known, made for a stretch that holds a whole number of its
 * cycles, so that every line of the tone's order spectrum is known, too.
 *
 * <p>Noise is stood for by a comb: every second line beside a harmonic, all of one amplitude b and
 * in phase where the stretch begins. Under Hann's window a line between two of them has half of
 * each with the sign turned, so that all lines beside have the power b², and noise of that median
 * has the mean b²/ln 2.
 */
final class OrderSound {

    static final int RATE = 44_100;
    static final double HZ = 1001;

    /** Whole cycles in the stretch: 394 steps of 45 frames, less one, last 0.40102 s. */
    private static final int CYCLES = 401;

    private static final int FIRST_FRAME = 2757;

    private static final int LENGTH = FIRST_FRAME + 394 * 45 + 1000;
    private static final double[] COMB = comb();

    private final double hz;
    private final double[] x = new double[LENGTH];

    private OrderSound(double hz) {
        this.hz = hz;
    }

    /** A tone of 1001 Hz. */
    static OrderSound tone(double peak) {
        return tone(HZ, peak);
    }

    /** A tone of another frequency, for which no comb is made. */
    static OrderSound tone(double hz, double peak) {
        return new OrderSound(hz).line(1, peak);
    }

    /** Adds a sine at a multiple of the tone, which need not be whole. */
    OrderSound line(double order, double peak) {
        double turn = 2 * Math.PI * hz * order / RATE;
        for (int i = 0; i < x.length; i++) {
            x[i] += peak * Math.cos(turn * (i - FIRST_FRAME));
        }
        return this;
    }

    /** Adds lines at so many lines to both sides of a harmonic. */
    OrderSound beside(int order, int lines, double peak) {
        return line(order - (double) lines / CYCLES, peak)
                .line(order + (double) lines / CYCLES, peak);
    }

    /** Adds what stands for noise of a mean power beside a harmonic. */
    OrderSound noise(int order, double power) {
        double peak = Math.sqrt(power * Math.log(2));
        double turn = 2 * Math.PI * hz * order / RATE;
        for (int i = 0; i < x.length; i++) {
            x[i] += 2 * peak * COMB[i] * Math.cos(turn * (i - FIRST_FRAME));
        }
        return this;
    }

    /** Cosines of the distances at which a comb has lines: of a product one lies to each side. */
    private static double[] comb() {
        double[] sum = new double[LENGTH];
        for (int d = 5; d <= 41; d += 2) {
            double turn = 2 * Math.PI * HZ * d / CYCLES / RATE;
            for (int i = 0; i < LENGTH; i++) {
                sum[i] += Math.cos(turn * (i - FIRST_FRAME));
            }
        }
        return sum;
    }

    OrderSpectrum spectrum() {
        ProgrammeReturn.Span span =
                new ProgrammeReturn.Span(
                        (FIRST_FRAME - 0.5) / RATE, (FIRST_FRAME + 394 * 45 - 0.5) / RATE);
        List<OrderSpectrum> orders = OrderSpectrum.of(new MemoryAudio("tone", RATE, x), span, hz);
        return orders.get(0);
    }

    /** The same with the tone's own line weakened to a share of its power, all else as it is. */
    static OrderSpectrum faded(OrderSpectrum sound, double share) {
        Complex gone = new Complex(1 - Math.sqrt(share), 0);
        return sound.without(
                sound, order -> Math.abs(order - 1) < 1.5 / CYCLES ? gone : Complex.ZERO);
    }
}
