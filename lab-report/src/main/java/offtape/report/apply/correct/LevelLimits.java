package offtape.report.apply.correct;

import java.util.Comparator;
import java.util.TreeMap;
import offtape.core.standard.Iec61260;
import offtape.core.unit.Quantity;
import offtape.report.apply.level.Compression;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.Results;

/**
 * The record level at which a channel compresses by 1 dB, over frequency. Two ladders tell it at
 * theirs; between them and above, a loud sweep tells by how much more a frequency is compressed
 * than 1 kHz, and the ladder of the highs at which level a tone of its own is compressed alike. So
 * highs are taken to bend along one curve that is only driven more or less, as a tape with emphasis
 * does. Without a loud sweep the limit runs straight over the logarithm of frequency (common
 * practice, no source).
 */
final class LevelLimits {

    /** Compression of a sweep that is less says nothing, dB. */
    private static final double LEAST_DB = 0.15;

    /** A band this near to a ladder is told by the ladder. */
    private static final double NEAR = 1.2;

    private static final double FROM_HZ = 1000;
    private static final double TO_HZ = 16_000;

    private LevelLimits() {}

    /** The curve, dB re reference, or null if no ladder tells one. */
    static Curve of(Results results, String channel) {
        Compression middle = Compression.ofMiddle(results.distortion(), channel);
        Compression highs = Compression.ofHighs(results.distortion(), channel);
        TreeMap<Double, Double> points = new TreeMap<>();
        put(points, middle);
        put(points, highs);
        if (middle != null && highs != null && points.size() == 2) {
            Response loud =
                    results.response().stream()
                            .filter(r -> r.channel().equals(channel))
                            .filter(r -> r.levelDependence() != null)
                            .max(Comparator.comparingDouble(Response::levelDb))
                            .orElse(null);
            if (loud != null) {
                fromSweep(points, loud, middle, highs);
            }
        }
        return points.isEmpty()
                ? null
                : new Curve(
                        points.keySet().stream().mapToDouble(x -> x).toArray(),
                        points.values().stream().mapToDouble(x -> x).toArray());
    }

    private static void put(TreeMap<Double, Double> points, Compression ladder) {
        Quantity oneDb = ladder == null ? null : ladder.ladder().levelAtCompressionOneDb();
        if (oneDb != null && oneDb.isKnown()) {
            points.put(ladder.ladder().frequencyHz(), oneDb.value());
        }
    }

    private static void fromSweep(
            TreeMap<Double, Double> points, Response loud, Compression middle, Compression highs) {
        LevelDependence d = loud.levelDependence();
        Curve difference = new Curve(d.frequencyHz(), d.differenceDb());
        Curve doubt = new Curve(d.frequencyHz(), d.uncertaintyDb());
        Double ofMiddle = middle.compressionAt(loud.levelDb());
        double low = points.firstKey() * NEAR;
        double ladderHz = points.lastKey();
        double oneDb = points.get(ladderHz);
        double top = Math.min(TO_HZ, difference.lastHz());
        if (ofMiddle == null || top <= FROM_HZ) {
            return;
        }
        for (double hz : Iec61260.bandCentresHz(FROM_HZ, top, 3)) {
            boolean near = hz < low || hz < ladderHz * NEAR && hz > ladderHz / NEAR;
            double lost = ofMiddle - difference.at(hz);
            double alike = highs.levelAt(lost);
            boolean sure = lost > Math.max(LEAST_DB, 2 * doubt.at(hz));
            if (!near && sure && Double.isFinite(alike)) {
                points.put(hz, oneDb - (alike - loud.levelDb()));
            }
        }
    }
}
