package offtape.report.measure.transport;

import java.util.List;
import java.util.Optional;
import offtape.core.standard.Iec60386;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.measure.speed.ToneReading;
import offtape.report.result.HealthNote;
import offtape.report.result.TransportSpeed;

/**
 * The transport's own speed for a session off tape.
 *
 * @param speed the readings, or the reason why there are none
 * @param notes what the reader should know of the time between the heads
 */
public record OffTapeSpeed(TransportSpeed speed, List<HealthNote> notes) {

    private static final Sentences SAID = Sentences.near(OffTapeSpeed.class);

    private static final String NOT_KNOWN = SAID.say("delay-not-known");

    /**
     * Finds it.
     *
     * @param tone what the steady tone tells
     * @param deviation why the mean speed cannot be known
     * @param headDelay delay less the interface's own, ms, if it is known
     * @param spacingSeconds distance of the heads over the tape's speed, or null
     * @param programmeDelaySeconds where the programme begins in the recording
     */
    public static OffTapeSpeed of(
            ToneReading tone,
            Quantity deviation,
            Quantity headDelay,
            Double spacingSeconds,
            double programmeDelaySeconds) {
        if (tone.deviation() == null) {
            return unknown(deviation, tone.speed().weightedRms().reason());
        }
        Optional<HeadDelay> delay =
                new HeadDelays(tone.deviation(), programmeDelaySeconds)
                        .decide(headDelay, spacingSeconds);
        return delay.map(
                        d ->
                                new OffTapeSpeed(
                                        TransportMeasure.of(
                                                Iec60386.atRate(tone.deviation().rateHz()),
                                                tone.deviation(),
                                                tone.speed().components(),
                                                d,
                                                deviation,
                                                tone.speed().deviation().value()),
                                        d.note() == null ? List.of() : List.of(d.note())))
                .orElseGet(() -> unknown(deviation, NOT_KNOWN));
    }

    private static OffTapeSpeed unknown(Quantity deviation, String reason) {
        return new OffTapeSpeed(TransportSpeed.unknown(deviation, reason), List.of());
    }
}
