package offtape.report.judge;

import java.util.Optional;
import java.util.stream.IntStream;
import offtape.report.result.Response;

/**
 * A response held against a band of levels.
 *
 * @param value the level that decides, dB re 1 kHz; of a width the width itself
 * @param uncertainty of it, expanded, dB
 * @param outcome what that says
 */
record Mask(double value, double uncertainty, Outcome outcome) {

    /** How near to the ends of the band the curve must reach, as a share of the frequency. */
    private static final double NEAR = 0.03;

    /** Empty if the response does not reach over the band. */
    static Optional<Mask> of(Response response, Limit limit) {
        double[] hz = response.frequencyHz();
        int[] inside =
                IntStream.range(0, hz.length)
                        .filter(i -> hz[i] >= limit.fromHz() && hz[i] <= limit.toHz())
                        .toArray();
        boolean reaches =
                inside.length > 1
                        && hz[0] <= limit.fromHz() * (1 + NEAR)
                        && hz[hz.length - 1] >= limit.toHz() * (1 - NEAR);
        if (!reaches) {
            return Optional.empty();
        }
        return Optional.of(
                limit.widthDb() != null
                        ? width(response, inside, limit.widthDb())
                        : levels(response, inside, limit));
    }

    private static Mask width(Response response, int[] inside, double widthDb) {
        int low = inside[0];
        int high = inside[0];
        for (int i : inside) {
            low = response.magnitudeDb()[i] < response.magnitudeDb()[low] ? i : low;
            high = response.magnitudeDb()[i] > response.magnitudeDb()[high] ? i : high;
        }
        double width = response.magnitudeDb()[high] - response.magnitudeDb()[low];
        double uncertainty =
                Math.hypot(response.uncertaintyDb()[low], response.uncertaintyDb()[high]);
        return new Mask(width, uncertainty, Outcome.of(widthDb - width, uncertainty));
    }

    private static Mask levels(Response response, int[] inside, Limit limit) {
        Mask worst = null;
        for (int i : inside) {
            double level = response.magnitudeDb()[i];
            double over = limit.highDb() == null ? Double.MAX_VALUE : limit.highDb() - level;
            double under = limit.lowDb() == null ? Double.MAX_VALUE : level - limit.lowDb();
            double uncertainty = response.uncertaintyDb()[i];
            Outcome here = Outcome.of(Math.min(over, under), uncertainty);
            if (worst == null || worst.outcome().worse(here) == here) {
                worst = new Mask(level, uncertainty, here);
            }
        }
        return worst;
    }
}
