package offtape.report.judge;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.StepNoise;
import offtape.report.result.Verdict;

/**
 * An invented session in round figures, of which parts can be left out.
 *
 * @param mode capture mode, or null
 */
record Measured(
        String mode,
        Speed speed,
        List<Response> response,
        List<Distortion> distortion,
        List<Noise> noise,
        Channels channels,
        List<HealthNote> health) {

    static final Quantity UNKNOWN = Quantity.unknown("It was drowned.");

    /** All of it, in two passes at 190.5 mm/s. */
    static Measured whole() {
        return new Measured(
                "two-pass",
                speed(percent(0.4, 0.05), percent(0.15, 0.01)),
                List.of(flat("left"), flat("right")),
                List.of(
                        ladder("left", db(6, 0.5), db(5, 0.3), 4.0),
                        ladder("right", db(4, 0.6), db(3, 0.3), 4.0)),
                List.of(
                        noise("left", db(-50, 0.4), db(58, 0.7), db(-53, 0.4)),
                        noise("right", db(-47, 0.4), db(55, 0.8), db(-52, 0.4))),
                channels(db(1.25, 0.25), db(-40, 1), db(-35, 2), Quantity.known(-12.0, "µs", 3)),
                List.of());
    }

    /** Nothing was measured. */
    static Measured nothing() {
        return new Measured("two-pass", null, List.of(), List.of(), List.of(), null, List.of());
    }

    Measured in(String other) {
        return new Measured(other, speed, response, distortion, noise, channels, health);
    }

    Measured with(Speed other) {
        return new Measured(mode, other, response, distortion, noise, channels, health);
    }

    Measured withResponse(Response... other) {
        return new Measured(mode, speed, List.of(other), distortion, noise, channels, health);
    }

    Measured withDistortion(Distortion... other) {
        return new Measured(mode, speed, response, List.of(other), noise, channels, health);
    }

    Measured withNoise(Noise... other) {
        return new Measured(mode, speed, response, distortion, List.of(other), channels, health);
    }

    Measured withHealth(HealthNote... other) {
        return new Measured(mode, speed, response, distortion, noise, channels, List.of(other));
    }

    Results results() {
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                new Session("a machine", null, 190.5, mode, "", null, null, null),
                null,
                speed,
                response,
                distortion,
                noise,
                channels,
                List.of(),
                health,
                Verdict.open("No limits were applied."),
                null);
    }

    static Quantity db(double value, double uncertainty) {
        return Quantity.known(value, "dB", uncertainty);
    }

    static Quantity percent(double value, double uncertainty) {
        return Quantity.known(value, "%", uncertainty);
    }

    static Speed speed(Quantity deviation, Quantity weightedPeak) {
        return new Speed(
                deviation,
                null,
                weightedPeak,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of());
    }

    /** At 0 dB from 20 Hz to 20 kHz, 0.25 dB sure. */
    static Response flat(String channel) {
        return curve(channel, "20:0:0.25 1000:0:0.25 20000:0:0.25");
    }

    /**
     * A response.
     *
     * @param points each frequency, Hz, level, dB re 1 kHz, and uncertainty, dB
     */
    static Response curve(String channel, String points) {
        String[] rows = points.split(" ");
        double[][] columns = new double[3][rows.length];
        for (int i = 0; i < rows.length; i++) {
            String[] row = rows[i].split(":");
            for (int c = 0; c < 3; c++) {
                columns[c][i] = Double.parseDouble(row[c]);
            }
        }
        return new Response(
                channel,
                -20,
                columns[0],
                columns[1],
                columns[2],
                null,
                null,
                null,
                100,
                5000,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    /** A ladder of two tones, the first at 0.5 % K3; that of the loudest may be unknown (null). */
    static Distortion ladder(
            String channel, Quantity levelAtThreePercent, Quantity outputLevel, Double loudestK3) {
        return ladder(
                channel,
                levelAtThreePercent,
                outputLevel,
                List.of(step(0, 0.5), step(8, loudestK3)));
    }

    static Distortion ladder(
            String channel,
            Quantity levelAtThreePercent,
            Quantity outputLevel,
            List<LadderStep> steps) {
        return new Distortion(
                channel,
                1000,
                steps,
                null,
                levelAtThreePercent,
                null,
                outputLevel,
                null,
                null,
                null,
                null,
                null);
    }

    /** A tone of a record level, dB, and its K3, or null if that is not known. */
    static LadderStep step(double levelDb, Double k3Percent) {
        return new LadderStep(
                levelDb, levelDb, null, k3Percent, null, null, null, false, StepNoise.NOT_HEARD);
    }

    static Noise noise(
            String channel, Quantity unweighted, Quantity dynamicRange, Quantity aWeighted) {
        return new Noise(
                channel,
                unweighted,
                aWeighted,
                null,
                dynamicRange,
                List.of(),
                null,
                null,
                null,
                null,
                null);
    }

    static Channels channels(
            Quantity balance, Quantity leftToRight, Quantity rightToLeft, Quantity delay) {
        return new Channels(
                balance,
                leftToRight,
                rightToLeft,
                delay,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                List.of(),
                null);
    }
}
