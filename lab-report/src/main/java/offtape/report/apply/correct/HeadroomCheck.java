package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.apply.level.Compression;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;
import offtape.report.result.Results;

/** Reads off a session what boosted highs meet on its tape. */
final class HeadroomCheck {

    private static final Sentences SAID = Sentences.near(HeadroomCheck.class);

    private static final double[] LEVELS_DB = {
        -20, -18, -16, -14, -12, -10, -8, -6, -4, -2, 0, 2, 4, 6
    };
    private static final double[] BOOSTS_DB = {0, 3, 6, 9, 12};
    private static final double USUAL_HZ = 10_000;

    private HeadroomCheck() {}

    /** The headroom of a channel with its filter. */
    static Headroom of(Results results, String channel, Curve gain) {
        Compression highs = Compression.ofHighs(results.distortion(), channel);
        Compression middle = Compression.ofMiddle(results.distortion(), channel);
        double hz = highs == null ? USUAL_HZ : highs.ladder().frequencyHz();
        double boost = Dial.level(gain.at(hz));
        Quantity none = Quantity.unknown(SAID.say("headroom.no-high-ladder"));
        Quantity oneDb = highs == null ? none : highs.ladder().levelAtCompressionOneDb();
        Quantity below = moved(oneDb, -gain.at(hz));
        Double reference = results.session().referenceDbfs();
        LevelDependence loud = loudest(results, channel);
        Quantity quiet = Quantity.unknown(SAID.say("headroom.no-loud-sweep"));
        return new Headroom(
                channel,
                hz,
                boost,
                oneDb,
                below,
                reference == null ? noReference() : moved(below, reference),
                highs == null ? none : highs.ladder().saturationOutputLevel(),
                middle == null
                        ? Quantity.unknown(SAID.say("headroom.no-middle-ladder"))
                        : middle.ladder().levelAtCompressionOneDb(),
                loud == null ? null : loudestLevel(results, channel),
                loud == null ? quiet : loud.lossAt10kHz(),
                loud == null ? quiet : loud.oneDbLossFrom(),
                highs == null ? List.of() : rows(highs, boost));
    }

    static Quantity noReference() {
        return Quantity.unknown(SAID.say("session.no-reference"));
    }

    static Quantity moved(Quantity level, double db) {
        return level.isKnown()
                ? Quantity.known(level.value() + db, level.unit(), level.uncertainty())
                : level;
    }

    private static LevelDependence loudest(Results results, String channel) {
        return results.response().stream()
                .filter(r -> r.channel().equals(channel) && r.levelDependence() != null)
                .max(Comparator.comparingDouble(Response::levelDb))
                .map(Response::levelDependence)
                .orElse(null);
    }

    private static Double loudestLevel(Results results, String channel) {
        return results.response().stream()
                .filter(r -> r.channel().equals(channel) && r.levelDependence() != null)
                .map(Response::levelDb)
                .max(Comparator.naturalOrder())
                .orElse(null);
    }

    private static List<Headroom.Row> rows(Compression highs, double ownBoostDb) {
        TreeSet<Double> boosts = new TreeSet<>();
        for (double b : BOOSTS_DB) {
            boosts.add(b);
        }
        boosts.add(ownBoostDb);
        List<Headroom.Row> rows = new ArrayList<>();
        for (double level : LEVELS_DB) {
            for (double boost : boosts) {
                rows.add(new Headroom.Row(level, boost, highs.compressionAt(level + boost)));
            }
        }
        return rows;
    }
}
