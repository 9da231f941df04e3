package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.unit.Quantity;

/**
 * How the two channels compare.
 *
 * @param balance dB, right re left
 * @param crosstalkLeftToRight dB at 1 kHz, re the right channel's reference
 * @param crosstalkRightToLeft dB at 1 kHz, re the left channel's reference
 * @param interchannelDelay µs, positive if the right channel is late; what differing amplifiers add
 *     is not in it
 * @param azimuth arc minutes, positive if the right channel is late
 * @param monoLossAt10kHz dB lost at 10 kHz when the channels are summed, 0 or more
 * @param interchannelDelayWander µs, root mean square about its mean, up to 20 Hz
 * @param interchannelDelayWanderPeakToPeak µs
 * @param azimuthWander arc minutes, root mean square
 * @param responseDelay µs that different responses of the amplifiers add to the delay below their
 *     edges
 * @param phaseResidual degrees, root mean square, that neither delay nor responses explain
 * @param crosstalk over frequency, one curve a direction; empty if no sweep sounded on one channel
 *     alone
 * @param delayTrace the delay over time, null if there was no tone
 * @param leakPhaseLeftToRight degrees, phase of {@code crosstalkLeftToRight} re the return of the
 *     left channel, −180 to 180; null where the leak is not told and in sessions of an earlier
 *     release
 * @param leakPhaseRightToLeft the same of the other direction
 * @param phaseDifference of the channels over frequency; null where no sweep told it and in
 *     sessions of an earlier release
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Channels(
        Quantity balance,
        Quantity crosstalkLeftToRight,
        Quantity crosstalkRightToLeft,
        Quantity interchannelDelay,
        Quantity azimuth,
        Quantity monoLossAt10kHz,
        Quantity interchannelDelayWander,
        Quantity interchannelDelayWanderPeakToPeak,
        Quantity azimuthWander,
        Quantity responseDelay,
        Quantity phaseResidual,
        List<CrosstalkCurve> crosstalk,
        DelayTrace delayTrace,
        Double leakPhaseLeftToRight,
        Double leakPhaseRightToLeft,
        PairPhaseCurve phaseDifference) {

    /** Copies the list so that the record cannot change. */
    public Channels {
        balance = Told.orUnknown(balance);
        crosstalkLeftToRight = Told.orUnknown(crosstalkLeftToRight);
        crosstalkRightToLeft = Told.orUnknown(crosstalkRightToLeft);
        interchannelDelay = Told.orUnknown(interchannelDelay);
        azimuth = Told.orUnknown(azimuth);
        monoLossAt10kHz = Told.orUnknown(monoLossAt10kHz);
        crosstalk = List.copyOf(crosstalk);
    }

    /** A pair of whose leaks no phase is told. */
    public Channels(
            Quantity balance,
            Quantity crosstalkLeftToRight,
            Quantity crosstalkRightToLeft,
            Quantity interchannelDelay,
            Quantity azimuth,
            Quantity monoLossAt10kHz,
            Quantity interchannelDelayWander,
            Quantity interchannelDelayWanderPeakToPeak,
            Quantity azimuthWander,
            Quantity responseDelay,
            Quantity phaseResidual,
            List<CrosstalkCurve> crosstalk,
            DelayTrace delayTrace) {
        this(
                balance,
                crosstalkLeftToRight,
                crosstalkRightToLeft,
                interchannelDelay,
                azimuth,
                monoLossAt10kHz,
                interchannelDelayWander,
                interchannelDelayWanderPeakToPeak,
                azimuthWander,
                responseDelay,
                phaseResidual,
                crosstalk,
                delayTrace,
                null,
                null,
                null);
    }

    /** A pair of which nothing is known, for one reason. */
    public static Channels unknown(String reason) {
        Quantity q = Quantity.unknown(reason);
        return new Channels(q, q, q, q, q, q, q, q, q, q, q, List.of(), null);
    }

    /** The same pair with other crosstalk. */
    public Channels withCrosstalk(Quantity leftToRight, Quantity rightToLeft) {
        return new Channels(
                balance,
                leftToRight,
                rightToLeft,
                interchannelDelay,
                azimuth,
                monoLossAt10kHz,
                interchannelDelayWander,
                interchannelDelayWanderPeakToPeak,
                azimuthWander,
                responseDelay,
                phaseResidual,
                crosstalk,
                delayTrace,
                leakPhaseLeftToRight,
                leakPhaseRightToLeft,
                phaseDifference);
    }

    /** The same pair without an angle, for a reason. */
    public Channels withoutAzimuth(String reason) {
        return new Channels(
                balance,
                crosstalkLeftToRight,
                crosstalkRightToLeft,
                interchannelDelay,
                Quantity.unknown(reason),
                monoLossAt10kHz,
                interchannelDelayWander,
                interchannelDelayWanderPeakToPeak,
                Quantity.unknown(reason),
                responseDelay,
                phaseResidual,
                crosstalk,
                delayTrace,
                leakPhaseLeftToRight,
                leakPhaseRightToLeft,
                phaseDifference);
    }
}
