package offtape.report.measure.processing;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import offtape.core.text.Sentences;
import offtape.report.result.HealthNote;
import offtape.report.result.Response;

/**
 * A bell in the middle of the response, as an equaliser makes it. Contours of the head lie where
 * waves on tape are longer than a millimetre; losses of gap, space and azimuth only fall towards
 * the highs; wrong equalisation is a shelf that a first-order filter makes. None of them stands out
 * of the octaves to either side and comes back to their level. That an equaliser made it cannot be
 * told from a resonance of an amplifier, so what was seen is noted and nothing is held against it.
 */
final class MiddleShape {

    private static final Sentences SAID = Sentences.near(MiddleShape.class);

    private static final double LEAST_HZ = 400;
    private static final double HIGHEST_HZ = 4000;

    /** Contours end where waves on tape are so long, with half as much to spare. */
    private static final double CONTOUR_MM = 1;

    private static final double SPARE = 1.5;
    private static final double USUAL_MM_PER_S = 381;

    /** So far it must stand out of the mean of both octaves, and of each of them, dB. */
    private static final double LEAST_DB = 2;

    private static final double LEAST_EACH_DB = 1.5;

    /** The octaves to either side, and the one above those, lie within this, dB. */
    private static final double LEVEL_DB = 2;

    /** Sweeps show the same within this, dB. */
    private static final double ALIKE_DB = 1;

    private final Response response;

    private MiddleShape(Response response) {
        this.response = response;
    }

    /**
     * The note, if the quietest sweep shows that and all louder ones of its channel do, which a
     * dropout does not.
     */
    static Optional<HealthNote> in(
            Response response, List<Response> all, OptionalDouble tapeSpeedMmPerS) {
        if (response.levelDependence() != null || response.frequencyHz().length == 0) {
            return Optional.empty();
        }
        List<MiddleShape> others =
                all.stream()
                        .filter(r -> r.channel().equals(response.channel()) && r != response)
                        .filter(r -> r.frequencyHz().length > 0)
                        .map(MiddleShape::new)
                        .toList();
        double contour = SPARE * tapeSpeedMmPerS.orElse(USUAL_MM_PER_S) / CONTOUR_MM;
        return others.isEmpty()
                ? Optional.empty()
                : new MiddleShape(response).most(Math.max(LEAST_HZ, contour), others);
    }

    private Optional<HealthNote> most(double fromHz, List<MiddleShape> others) {
        double[] hz = response.frequencyHz();
        double most = 0;
        double at = 0;
        for (double f : hz) {
            boolean within = f >= fromHz && f <= HIGHEST_HZ;
            double stands = within && reaches(f) ? standsOutDb(f) : 0;
            if (Math.abs(stands) > Math.abs(most)) {
                most = stands;
                at = f;
            }
        }
        double found = most;
        double hzOfMost = at;
        boolean seenByAll =
                others.stream()
                        .mapToDouble(o -> o.reaches(hzOfMost) ? o.standsOutDb(hzOfMost) : 0)
                        .allMatch(db -> Math.abs(db - found) < ALIKE_DB);
        return Math.abs(most) > LEAST_DB && seenByAll
                ? Optional.of(note(at, most))
                : Optional.empty();
    }

    private boolean reaches(double f) {
        double[] hz = response.frequencyHz();
        return f / 2 >= hz[0] && 4 * f <= hz[hz.length - 1];
    }

    /** Above 0 for a peak, below for a dip, 0 if it is no bell. */
    private double standsOutDb(double f) {
        double here = db(f);
        double below = db(f / 2);
        double above = db(2 * f);
        double sign = Math.signum(here - below);
        boolean bell =
                sign * (here - below) > LEAST_EACH_DB
                        && sign * (here - above) > LEAST_EACH_DB
                        && Math.abs(above - below) < LEVEL_DB
                        && Math.abs(db(4 * f) - above) < LEVEL_DB;
        return bell ? here - (below + above) / 2 : 0;
    }

    private double db(double f) {
        double[] hz = response.frequencyHz();
        int i = 0;
        while (i < hz.length - 2 && hz[i + 1] < f) {
            i++;
        }
        double part = Math.log(f / hz[i]) / Math.log(hz[i + 1] / hz[i]);
        return response.magnitudeDb()[i] * (1 - part) + response.magnitudeDb()[i + 1] * part;
    }

    private HealthNote note(double hz, double db) {
        return new HealthNote(
                "note",
                "middle-not-of-tape",
                SAID.say(
                        db > 0 ? "middle-peak" : "middle-dip",
                        response.channel(),
                        Math.abs(db),
                        hz));
    }
}
