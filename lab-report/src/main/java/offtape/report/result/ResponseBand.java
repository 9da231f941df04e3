package offtape.report.result;

import offtape.core.unit.Quantity;

/**
 * The widest band around 1 kHz within which a response stays between two limits. DIN 45500 part 4
 * states its bands as a width ("5 dB wide") wherever 1 kHz lies in it; this one is around 1 kHz.
 *
 * @param toleranceDb the response stays within ± this re 1 kHz
 * @param fromHz lowest frequency of the band as far as the sweep reaches
 * @param toHz highest frequency of the band as far as the sweep reaches
 * @param lowerEnd Hz, where the response leaves the band; unknown if it does not before the sweep
 *     ends
 * @param upperEnd Hz, the same upwards
 */
public record ResponseBand(
        double toleranceDb, double fromHz, double toHz, Quantity lowerEnd, Quantity upperEnd) {}
