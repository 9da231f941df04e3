package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Objects;
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
 * @param bands widest bands within ±1, ±2 and ±3 dB
 * @param contour peaks and dips of the bass, of rising frequency
 * @param levelDependence against the quietest sweep, or null for that one itself
 * @param phaseDegrees phase of the return re the programme without its mean delay, as heard: motion
 *     turns it by its lateness times the frequency, so it is that of the path in the bass and on
 *     steady transports only; −180 to 180, same length. Null where an interface was taken out and
 *     in sessions of an earlier release
 * @param harmonics second and third harmonic over frequency; empty but for the loudest sweep
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
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
        double rippleToHz,
        List<ResponseBand> bands,
        List<ContourPoint> contour,
        LevelDependence levelDependence,
        List<HarmonicCurve> harmonics,
        double[] phaseDegrees) {

    /** Copies the lists so that the response cannot change; those of numbers belong together. */
    public Response {
        Objects.requireNonNull(channel, "channel");
        Columns.requireEven(frequencyHz, magnitudeDb, uncertaintyDb);
        if (phaseDegrees != null) {
            Columns.requireEven(frequencyHz, phaseDegrees);
        }
        bands = List.copyOf(bands);
        contour = List.copyOf(contour);
        harmonics = List.copyOf(harmonics);
    }

    /** A response whose phase is not told. */
    public Response(
            String channel,
            double levelDb,
            double[] frequencyHz,
            double[] magnitudeDb,
            double[] uncertaintyDb,
            Quantity lowerEdge,
            Quantity upperEdge,
            Quantity ripple,
            double rippleFromHz,
            double rippleToHz,
            List<ResponseBand> bands,
            List<ContourPoint> contour,
            LevelDependence levelDependence,
            List<HarmonicCurve> harmonics) {
        this(
                channel,
                levelDb,
                frequencyHz,
                magnitudeDb,
                uncertaintyDb,
                lowerEdge,
                upperEdge,
                ripple,
                rippleFromHz,
                rippleToHz,
                bands,
                contour,
                levelDependence,
                harmonics,
                null);
    }

    /** The same response held against that of a quieter sweep. */
    public Response withLevelDependence(LevelDependence found) {
        return new Response(
                channel,
                levelDb,
                frequencyHz,
                magnitudeDb,
                uncertaintyDb,
                lowerEdge,
                upperEdge,
                ripple,
                rippleFromHz,
                rippleToHz,
                bands,
                contour,
                found,
                harmonics,
                phaseDegrees);
    }

    /** The same response with the harmonics of its sweep. */
    public Response withHarmonics(List<HarmonicCurve> found) {
        return new Response(
                channel,
                levelDb,
                frequencyHz,
                magnitudeDb,
                uncertaintyDb,
                lowerEdge,
                upperEdge,
                ripple,
                rippleFromHz,
                rippleToHz,
                bands,
                contour,
                levelDependence,
                found,
                phaseDegrees);
    }

    /** The same response with its phase, degrees, one value a frequency. */
    public Response withPhase(double[] degrees) {
        return new Response(
                channel,
                levelDb,
                frequencyHz,
                magnitudeDb,
                uncertaintyDb,
                lowerEdge,
                upperEdge,
                ripple,
                rippleFromHz,
                rippleToHz,
                bands,
                contour,
                levelDependence,
                harmonics,
                degrees);
    }
}
