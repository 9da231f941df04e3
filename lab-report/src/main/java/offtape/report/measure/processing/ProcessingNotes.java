package offtape.report.measure.processing;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.Response;

/**
 * What the figures show of processing in the path that is not the machine: a limiter, noise
 * reduction, an equaliser, lossy coding. Each is told by something that tape cannot do; what tape
 * may do as well is left alone.
 */
public final class ProcessingNotes {

    private ProcessingNotes() {}

    /**
     * All notes.
     *
     * @param ladders all ladders of the return
     * @param responses all responses of the return
     * @param noise of its silence, or null if there is none
     * @param sampleRateHz of the return
     * @param tapeSpeedMmPerS nominal, if known
     */
    public static List<HealthNote> of(
            List<Distortion> ladders,
            List<Response> responses,
            NoiseDensities noise,
            int sampleRateHz,
            OptionalDouble tapeSpeedMmPerS) {
        List<HealthNote> notes = new ArrayList<>();
        BandWall.in(noise, sampleRateHz).ifPresent(notes::add);
        for (Distortion ladder : ladders) {
            GainWithoutDistortion.in(ladder).ifPresent(notes::add);
            FallingHighs.in(ladder).ifPresent(notes::add);
        }
        for (Response response : responses) {
            RisingHighs.in(response, ladders).ifPresent(notes::add);
            MiddleShape.in(response, responses, tapeSpeedMmPerS).ifPresent(notes::add);
        }
        return notes;
    }
}
