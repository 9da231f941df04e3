package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;

/**
 * Crosstalk over frequency in one direction: what a channel hears of a sweep on the other alone, re
 * what it returns of the same sweep of its own.
 *
 * @param from the channel that sounds, {@code left} or {@code right}
 * @param into the channel that should be silent
 * @param frequencyHz middles of third-octave bands in the programme
 * @param crosstalkDb dB, negative; null where the leak stays under the noise
 * @param uncertaintyDb k = 2; null likewise
 * @param floorDb the least crosstalk that could be told
 * @param phaseDegrees phase of the leak re the return of the channel that sounds, −180 to 180; null
 *     where the leak stays under the noise, all of it null in sessions of an earlier release
 */
public record CrosstalkCurve(
        String from,
        String into,
        double[] frequencyHz,
        @JsonSetter(contentNulls = Nulls.SET) Double[] crosstalkDb,
        @JsonSetter(contentNulls = Nulls.SET) Double[] uncertaintyDb,
        double[] floorDb,
        @JsonInclude(JsonInclude.Include.NON_NULL) @JsonSetter(contentNulls = Nulls.SET)
                Double[] phaseDegrees) {

    /** Checks that the lists belong together. */
    public CrosstalkCurve {
        Columns.requireEven(frequencyHz, floorDb);
        Columns.requireEven(frequencyHz.length, crosstalkDb, uncertaintyDb);
        if (phaseDegrees != null) {
            Columns.requireEven(frequencyHz.length, phaseDegrees);
        }
    }

    /** A curve without phases. */
    public CrosstalkCurve(
            String from,
            String into,
            double[] frequencyHz,
            Double[] crosstalkDb,
            Double[] uncertaintyDb,
            double[] floorDb) {
        this(from, into, frequencyHz, crosstalkDb, uncertaintyDb, floorDb, null);
    }
}
