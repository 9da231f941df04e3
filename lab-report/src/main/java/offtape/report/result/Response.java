package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * Frequency response of one channel at one level.
 *
 * @param channel {@code left} or {@code right}
 * @param levelDb programme level of the sweep, dB re reference
 * @param frequencyHz frequencies of the programme, rising
 * @param magnitudeDb magnitude, 0 dB at 1 kHz, same length
 * @param uncertaintyDb expanded uncertainty (k = 2) of each magnitude, same length
 * @param lowerEdge Hz, -3 dB re 1 kHz
 * @param upperEdge Hz, -3 dB re 1 kHz
 * @param ripple dB, half the range of the magnitude between {@code rippleFromHz} and {@code
 *     rippleToHz}
 * @param rippleFromHz lower end of the band of {@code ripple}
 * @param rippleToHz upper end of the band of {@code ripple}
 */
public record Response(
        String channel,
        double levelDb,
        double[] frequencyHz,
        double[] magnitudeDb,
        double[] uncertaintyDb,
        Quantity lowerEdge,
        Quantity upperEdge,
        Quantity ripple,
        double rippleFromHz,
        double rippleToHz) {}
