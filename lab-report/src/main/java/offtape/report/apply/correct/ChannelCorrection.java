package offtape.report.apply.correct;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * The correction of one channel: of its programme before the machine, or of its return.
 *
 * @param channel {@code left} or {@code right}
 * @param sweepLevelDb level of the sweep that told the response, dB re reference
 * @param frequencyHz frequencies, rising
 * @param measuredDb response as measured, dB re 1 kHz, same length
 * @param uncertaintyDb expanded uncertainty (k = 2) of that, same length
 * @param targetDb response wanted, dB re 1 kHz, same length
 * @param gainDb gain of the filter, dB re 1 kHz, same length
 * @param afterDb response to be expected with it, dB re 1 kHz, same length
 * @param metFromHz lowest frequency of the band around 1 kHz in which that keeps within {@link
 *     #MET_DB} of the target
 * @param metToHz its highest frequency
 * @param limited stretches of the measured curve in which the limits of boost and cut, the fading
 *     at the ends or the uncertainty keep more than {@link #MET_DB} of the wanted gain back
 * @param mostGainDb largest gain of the filter, dB
 * @param mostGainHz where that is
 * @param equaliser the same on a parametric equaliser
 * @param equaliserDb gain of that, trim included, dB, same length as {@code frequencyHz}
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ChannelCorrection(
        String channel,
        double sweepLevelDb,
        double[] frequencyHz,
        double[] measuredDb,
        double[] uncertaintyDb,
        double[] targetDb,
        double[] gainDb,
        double[] afterDb,
        double metFromHz,
        double metToHz,
        List<Stretch> limited,
        double mostGainDb,
        double mostGainHz,
        EqualiserSettings equaliser,
        double[] equaliserDb) {

    /** What a response may be off the target and still be called right, dB. */
    public static final double MET_DB = 0.5;

    /** Copies the list. */
    public ChannelCorrection {
        limited = List.copyOf(limited);
    }

    /** The filter's gain as a curve. */
    Curve gain() {
        return new Curve(frequencyHz, gainDb);
    }

    /** The filter's gain in dB at a frequency in hertz above 0. */
    public double gainDbAt(double hz) {
        return gain().at(hz);
    }
}
