package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.LevelDependence;
import offtape.report.result.Response;

/**
 * What becomes of the response when the sweep is louder: each response against that of the quietest
 * sweep on the same channel, both 0 dB at 1 kHz.
 */
final class LevelDependenceMeasure {

    private static final Sentences SAID = Sentences.near(LevelDependenceMeasure.class);

    private static final double HIGH_HZ = 10_000;
    private static final double LOSS_DB = 1;

    private LevelDependenceMeasure() {}

    /** The responses, the louder ones held against the quietest of their channel. */
    static List<Response> added(List<Response> responses) {
        List<Response> result = new ArrayList<>();
        for (Response loud : responses) {
            Optional<Response> quiet =
                    responses.stream()
                            .filter(r -> r.channel().equals(loud.channel()))
                            .min(Comparator.comparingDouble(Response::levelDb))
                            .filter(r -> r.levelDb() < loud.levelDb());
            result.add(quiet.map(q -> loud.withLevelDependence(between(q, loud))).orElse(loud));
        }
        return result;
    }

    /** Compares two responses at the frequencies that both have. */
    static LevelDependence between(Response quiet, Response loud) {
        ResponseCurve difference = difference(quiet, loud);
        return new LevelDependence(
                quiet.levelDb(),
                difference.hz(),
                difference.db(),
                difference.uncertaintyDb(),
                lossAtHigh(difference),
                lossFrom(difference));
    }

    private static ResponseCurve difference(Response quiet, Response loud) {
        List<double[]> points = new ArrayList<>();
        int q = 0;
        for (int i = 0; i < loud.frequencyHz().length; i++) {
            double hz = loud.frequencyHz()[i];
            while (q < quiet.frequencyHz().length && quiet.frequencyHz()[q] < hz * 0.999) {
                q++;
            }
            if (q < quiet.frequencyHz().length && quiet.frequencyHz()[q] < hz * 1.001) {
                points.add(
                        new double[] {
                            hz,
                            loud.magnitudeDb()[i] - quiet.magnitudeDb()[q],
                            Math.hypot(loud.uncertaintyDb()[i], quiet.uncertaintyDb()[q])
                        });
            }
        }
        return new ResponseCurve(column(points, 0), column(points, 1), column(points, 2));
    }

    private static double[] column(List<double[]> points, int column) {
        return points.stream().mapToDouble(p -> p[column]).toArray();
    }

    private static Quantity lossAtHigh(ResponseCurve difference) {
        double[] hz = difference.hz();
        if (hz.length == 0 || hz[hz.length - 1] < HIGH_HZ || hz[0] > HIGH_HZ) {
            return Quantity.unknown(SAID.say("no-high"));
        }
        int above = 1;
        while (hz[above] < HIGH_HZ) {
            above++;
        }
        double part = Math.log(HIGH_HZ / hz[above - 1]) / Math.log(hz[above] / hz[above - 1]);
        double[] db = difference.db();
        return Quantity.known(
                -(db[above - 1] + part * (db[above] - db[above - 1])),
                "dB",
                Math.max(difference.uncertaintyDb()[above - 1], difference.uncertaintyDb()[above]));
    }

    private static Quantity lossFrom(ResponseCurve difference) {
        String otherwise = SAID.say("no-loss");
        return difference.size() == 0
                ? Quantity.unknown(otherwise)
                : difference.crossing(1, i -> -difference.db()[i] - LOSS_DB, otherwise);
    }
}
