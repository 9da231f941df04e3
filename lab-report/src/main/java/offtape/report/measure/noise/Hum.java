package offtape.report.measure.noise;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.HumLine;

/**
 * Mains lines found in silence.
 *
 * @param lines in order of frequency
 * @param mainsFrequency the frequency whose multiples they are, Hz
 * @param threshold level from which a line of low order would have been found, dB re reference
 */
record Hum(List<HumLine> lines, Quantity mainsFrequency, Quantity threshold) {

    /** Nothing can be told, for a reason. */
    static Hum unknown(String reason) {
        return new Hum(List.of(), Quantity.unknown(reason), Quantity.unknown(reason));
    }
}
