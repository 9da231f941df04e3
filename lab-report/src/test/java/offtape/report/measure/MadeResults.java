package offtape.report.measure;

import java.util.Arrays;
import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.Dropout;
import offtape.report.result.DropoutSummary;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.HealthNote;
import offtape.report.result.HumLine;
import offtape.report.result.LadderStep;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.Timing;
import offtape.report.result.Verdict;

/** Results put together by hand, as if they had been measured. */
final class MadeResults {

    static final Quantity NO = Quantity.unknown("This was not measured.");

    private MadeResults() {}

    /** A figure of which the uncertainty is a tenth of a unit. */
    static Quantity about(double value, String unit) {
        return Quantity.known(value, unit, 0.1);
    }

    static Results of(
            Timing timing,
            List<Response> responses,
            List<Distortion> ladders,
            List<Noise> noises,
            Channels pair) {
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                new Session("Deck", null, 190.5, "off-tape", "", null, "", ""),
                timing,
                Speed.unknown("No tone."),
                responses,
                ladders,
                noises,
                pair,
                List.of(new Dropout("left", 3, 20, 9, false)),
                List.of(new HealthNote("warning", "clipping", "It is clipped.")),
                Verdict.open("No limits."),
                new DropoutSummary(60, about(1, ""), about(9, "dB"), about(20, "ms")));
    }

    /**
     * A delay of 105 ms.
     *
     * @param headDelay between record and replay head
     */
    static Timing timing(Quantity headDelay, Quantity clock) {
        return new Timing(about(105, "ms"), headDelay, NO, "normal", clock);
    }

    static Response response(String channel, double levelDb, double[] hz, double... db) {
        double[] uncertainty = new double[hz.length];
        Arrays.setAll(uncertainty, i -> 0.1 + 0.01 * i);
        return new Response(
                channel,
                levelDb,
                hz,
                db,
                uncertainty,
                NO,
                NO,
                NO,
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    /** The third harmonic at 1 kHz. */
    static List<HarmonicCurve> third(double percent) {
        return List.of(
                new HarmonicCurve(
                        3, List.of(new HarmonicCurve.Point(1000, percent, 0.003, 0.0001))));
    }

    static Distortion ladder(
            String channel, double hz, Quantity maximumOutputLevel, LadderStep... steps) {
        return new Distortion(
                channel,
                hz,
                List.of(steps),
                NO,
                NO,
                NO,
                maximumOutputLevel,
                NO,
                NO,
                NO,
                null,
                null);
    }

    /** Noise of three weightings and a line of the mains. */
    static Noise noise(
            String channel, double unweightedDb, double aDb, double itu468Db, HumLine... hum) {
        return new Noise(
                channel,
                about(unweightedDb, "dB"),
                about(aDb, "dB"),
                about(itu468Db, "dB"),
                about(70, "dB"),
                List.of(hum),
                new NoiseSpectrum(new double[] {1000}, new double[] {-70}),
                null,
                NO,
                NO,
                NO);
    }

    /** Crosstalk and delay; nothing else is known but an angle. */
    static Channels pair(Quantity toRight, Quantity toLeft, Quantity rightLate) {
        return new Channels(
                NO,
                toRight,
                toLeft,
                rightLate,
                about(3, "'"),
                NO,
                NO,
                NO,
                about(1, "'"),
                NO,
                NO,
                List.of(),
                null);
    }
}
