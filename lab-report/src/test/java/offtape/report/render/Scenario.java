package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.Channels;
import offtape.report.result.ContourPoint;
import offtape.report.result.CrosstalkCurve;
import offtape.report.result.DelayTrace;
import offtape.report.result.Distortion;
import offtape.report.result.Dropout;
import offtape.report.result.DropoutSummary;
import offtape.report.result.FittedCurve;
import offtape.report.result.HarmonicCurve;
import offtape.report.result.HealthNote;
import offtape.report.result.HumLine;
import offtape.report.result.LadderStep;
import offtape.report.result.LevelDependence;
import offtape.report.result.LossAlternative;
import offtape.report.result.LossCause;
import offtape.report.result.LossCorrelation;
import offtape.report.result.LossFit;
import offtape.report.result.Noise;
import offtape.report.result.NoiseSpectrum;
import offtape.report.result.Response;
import offtape.report.result.ResponseBand;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedFloors;
import offtape.report.result.SpeedReadings;
import offtape.report.result.SpeedSpectrum;
import offtape.report.result.SpeedTrace;
import offtape.report.result.StepNoise;
import offtape.report.result.Timing;
import offtape.report.result.Verdict;
import offtape.report.result.WorstTenSeconds;

/** Invented sessions of an invented machine, smooth enough to look like measured ones. */
final class Scenario {

    static final Quantity UNKNOWN = Quantity.unknown("This recording cannot tell.");

    private Scenario() {}

    /** A machine in need of care: dull right channel, slow, a worn roller, hum on the left. */
    static Results before() {
        return session(
                new Session(
                        "Kitchen-table two-track",
                        "a roll of long-play tape",
                        190.5,
                        "off-tape",
                        "2026-03-14T18:20:00Z",
                        "Second owner; heads cleaned, not demagnetised.",
                        "Offtape 0.1.0",
                        "3f0c".repeat(16)),
                0);
    }

    /** The same machine after a service. */
    static Results after() {
        return session(
                new Session(
                        "Kitchen-table two-track",
                        "a roll of long-play tape",
                        190.5,
                        "off-tape",
                        "2026-03-28T10:05:00Z",
                        null,
                        "Offtape 0.1.0",
                        "a81e".repeat(16)),
                1);
    }

    /** A session that holds nothing but its description. */
    static Results empty(String machineName) {
        return with(
                new Session(machineName, null, null, null, "", null, null, null),
                null,
                null,
                List.of(),
                List.of(),
                List.of(),
                null,
                List.of());
    }

    /** Results of given parts, with neither dropouts nor a decision. */
    static Results with(
            Session session,
            Timing timing,
            Speed speed,
            List<Response> response,
            List<Distortion> distortion,
            List<Noise> noise,
            Channels channels,
            List<HealthNote> health) {
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                session,
                timing,
                speed,
                response,
                distortion,
                noise,
                channels,
                List.of(),
                health,
                Verdict.open("No limits were applied, so there is no decision."),
                null,
                null,
                null,
                List.of());
    }

    static Results session(Session session, double repaired) {
        List<Response> response =
                List.of(
                        response("left", -20, 15_200 + 1500 * repaired),
                        response("right", -20, 9_800 + 6400 * repaired),
                        response("left", 0, 9_600 + 500 * repaired),
                        response("right", 0, 7_400 + 2500 * repaired));
        List<Distortion> distortion =
                List.of(
                        ladder("left", 1000, 6.1 + 0.4 * repaired),
                        ladder("left", 10_000, -2),
                        ladder("right", 1000, 4.4 + 1.8 * repaired),
                        ladder("right", 10_000, -5 + 2.5 * repaired));
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                session,
                new Timing(
                        known(163.42, "ms", 0.01),
                        UNKNOWN,
                        Quantity.unknown("Needs a loopback session of the interface."),
                        "normal",
                        known(-3.1, "ppm", 0.4)),
                speed(repaired),
                response,
                distortion,
                List.of(noise("left", -56.2, -62 - 9 * repaired), noise("right", -55.4, -80)),
                new Channels(
                        known(-0.84 + 0.8 * repaired, "dB", 0.03),
                        known(-46.3, "dB", 0.5),
                        known(-44.9, "dB", 0.5),
                        known(14.2 - 13.5 * repaired, "µs", 0.3),
                        known(2.9 - 2.7 * repaired, "arc min", 0.1),
                        known(0.85 - 0.84 * repaired, "dB", 0.02),
                        known(1.32, "µs", 0.01),
                        known(5.6, "µs", 0.1),
                        known(0.22, "arc min", 0.02),
                        known(0, "µs", 0.04),
                        known(0.3, "°", 0.2),
                        List.of(crosstalk("left", "right"), crosstalk("right", "left")),
                        skew(14.2 - 13.5 * repaired)),
                List.of(
                        new Dropout("right", 41.32, 23.4, 5.2, false),
                        new Dropout("left", 77.01, 12.1, 3.4, true),
                        new Dropout("right", 77.01, 14.0, 4.1, true)),
                List.of(
                        new HealthNote(
                                "warning",
                                "level",
                                "The return peaks 0.4 dB below full scale at 92.1 s on the left"
                                        + " channel. Turn the input down by 6 dB and capture again"
                                        + " if the loudest tones matter."),
                        new HealthNote(
                                "note",
                                "cross-check",
                                "Stepped tones agree with the sweep within 0.05 dB.")),
                Verdict.open("No limits were applied, so there is no decision yet."),
                new DropoutSummary(
                        64.7,
                        known(1.85, "1/min", 2.6),
                        known(5.2, "dB", 0.3),
                        known(23.4, "ms", 2.3)),
                null,
                null,
                List.of(losses("left", 0.4), losses("right", 1.6 - 1.2 * repaired)));
    }

    /** A space that is told and an amplifier that is bounded. */
    private static LossFit losses(String channel, double spacingUm) {
        int n = 64;
        double[] f = new double[n];
        double[] share = new double[n];
        for (int i = 0; i < n; i++) {
            f[i] = 500 * Math.pow(2, i / 12.0);
            share[i] = -54.575 * spacingUm * (f[i] - 1000) / 190_500;
        }
        return new LossFit(
                channel,
                known(0.08, "dB", 0.01),
                0,
                f,
                share,
                List.of(
                        new LossCause(
                                "spacing",
                                known(spacingUm, "µm", 0.06),
                                null,
                                null,
                                null,
                                null,
                                share),
                        new LossCause(
                                "upper-edge",
                                Quantity.unknown(
                                        "The curve can be explained without it; if it takes part,"
                                                + " it lies above 24.0 kHz."),
                                null,
                                24_000.0,
                                "Hz",
                                null,
                                new double[0])),
                List.of(
                        new LossAlternative(List.of("spacing"), 0, 0.08, "spacing 0.40 µm"),
                        new LossAlternative(List.of("thickness"), 3, 0.09, "thickness 0.85 µm")),
                List.of(new LossCorrelation("spacing", "thickness", -0.98)),
                List.of("A space and a thick layer look alike above 4.0 kHz on this recording."));
    }

    /** Crosstalk that rises by 6 dB an octave above 1 kHz and is hidden by noise below 100 Hz. */
    private static CrosstalkCurve crosstalk(String from, String into) {
        int n = 25;
        double[] f = new double[n];
        Double[] db = new Double[n];
        Double[] uncertainty = new Double[n];
        double[] floor = new double[n];
        for (int i = 0; i < n; i++) {
            f[i] = 63 * Math.pow(2, i / 3.0);
            floor[i] = -60 - i / 5.0;
            if (f[i] > 100) {
                db[i] = -46 + 20 * Math.log10(1 + f[i] / 5000);
                uncertainty[i] = 0.4;
            }
        }
        return new CrosstalkCurve(from, into, f, db, uncertainty, floor);
    }

    /** A delay that sways by 2 µs every five seconds. */
    private static DelayTrace skew(double mean) {
        double[] t = IntStream.range(0, 1200).mapToDouble(i -> 0.05 * i).toArray();
        double[] us = DoubleStream.of(t).map(s -> mean + 2 * Math.sin(1.257 * s)).toArray();
        return new DelayTrace(t, us);
    }

    static Quantity known(double value, String unit, double uncertainty) {
        return Quantity.known(value, unit, uncertainty);
    }

    /** A band of second order at 32 Hz and third order at {@code upperHz}, with a head bump. */
    static Response response(String channel, double levelDb, double upperHz) {
        double[] f =
                IntStream.rangeClosed(0, 120)
                        .mapToDouble(i -> 20 * Math.pow(2, i / 12.0))
                        .toArray();
        double[] magnitude = DoubleStream.of(f).map(hz -> magnitude(hz, upperHz)).toArray();
        return new Response(
                channel,
                levelDb,
                f,
                magnitude,
                DoubleStream.of(f).map(hz -> hz > 10_000 ? 0.12 : 0.06).toArray(),
                known(32.4, "Hz", 0.5),
                known(upperHz, "Hz", 0.01 * upperHz),
                known(1.14, "dB", 0.06),
                63,
                8000,
                List.of(
                        band(1, 58, 0.55 * upperHz),
                        band(2, 39, 0.8 * upperHz),
                        new ResponseBand(
                                3,
                                20,
                                upperHz,
                                Quantity.unknown("It stays within ±3 dB down to 20 Hz."),
                                known(upperHz, "Hz", 0.01 * upperHz))),
                List.of(
                        new ContourPoint(
                                "peak", known(71, "Hz", 4), known(1.45, "dB", 0.06), 1.4, 2.7)),
                levelDb == -20 ? null : dependence(f, upperHz),
                levelDb == -20 ? List.of() : List.of(harmonic(2, 0.2), harmonic(3, 0.7)));
    }

    private static ResponseBand band(double toleranceDb, double fromHz, double toHz) {
        return new ResponseBand(
                toleranceDb,
                fromHz,
                toHz,
                known(fromHz, "Hz", 0.02 * fromHz),
                known(toHz, "Hz", 0.02 * toHz));
    }

    private static LevelDependence dependence(double[] f, double upperHz) {
        return new LevelDependence(
                -20,
                f,
                DoubleStream.of(f).map(hz -> -2 * Math.pow(hz / upperHz, 2)).toArray(),
                DoubleStream.of(f).map(hz -> 0.06).toArray(),
                known(2 * Math.pow(10_000 / upperHz, 2), "dB", 0.06),
                known(upperHz / Math.sqrt(2), "Hz", 200));
    }

    private static HarmonicCurve harmonic(int order, double percent) {
        return new HarmonicCurve(
                order,
                IntStream.rangeClosed(-24, 15)
                        .mapToObj(n -> harmonicPoint(1000 * Math.pow(2, n / 6.0), percent))
                        .toList());
    }

    private static HarmonicCurve.Point harmonicPoint(double hz, double percent) {
        double value = percent * (1 + hz / 2000);
        return hz < 80
                ? new HarmonicCurve.Point(hz, null, null, 0.2)
                : new HarmonicCurve.Point(hz, value, 0.03 * value, 0.02);
    }

    private static double magnitude(double hz, double upperHz) {
        double low = -10 * Math.log10(1 + Math.pow(32.4 / hz, 4));
        double high = -10 * Math.log10(1 + Math.pow(hz / upperHz, 5));
        double bump = 1.6 * Math.exp(-Math.pow(Math.log(hz / 70) / 0.35, 2));
        double ripple = 0.25 * Math.sin(3 * Math.log(hz)) * Math.exp(-hz / 3000);
        return low + high + bump + ripple;
    }

    /** A ladder from −20 to +12 dB whose K3 rises with the square of level, 3 % at {@code at3}. */
    static Distortion ladder(String channel, double hz, double at3) {
        List<LadderStep> steps = new ArrayList<>();
        for (double record = -20; record <= 12; record += 2) {
            double k3 = 3 * Math.pow(10, (record - at3) / 10);
            double squeezed = 10 * Math.log10(1 + Math.pow(10, (record - at3 - 5) / 6.5));
            boolean treble = hz > 7000;
            steps.add(
                    new LadderStep(
                            record,
                            record - squeezed * (treble ? 1.9 : 1),
                            treble ? null : 0.11,
                            treble ? null : k3,
                            treble ? null : Math.hypot(k3, 0.11),
                            squeezed,
                            0.04,
                            k3 < 0.08,
                            new StepNoise(
                                    treble ? 0.02 : null, null, null, 0.04, 0.002, record == -14)));
        }
        return new Distortion(
                channel,
                hz,
                steps,
                hz > 7000 ? UNKNOWN : known(at3 - 4.77, "dB", 0.12),
                hz > 7000 ? UNKNOWN : known(at3, "dB", 0.12),
                known(at3 + 1.2, "dB", 0.15),
                hz > 7000 ? UNKNOWN : known(at3 - 0.7, "dB", 0.13),
                hz > 7000
                        ? known(at3 + 1.3, "dB", 0.1)
                        : Quantity.unknown("Told by the 10 kHz ladder."),
                hz > 7000 ? UNKNOWN : known(at3 - 4.9, "dB", 0.12),
                hz > 7000 ? UNKNOWN : known(1.98, "dB/dB", 0.05),
                hz > 7000 ? null : k3Curve(at3),
                null);
    }

    private static FittedCurve k3Curve(double at3) {
        double[] levels = IntStream.rangeClosed(-20, 4).mapToDouble(i -> i).toArray();
        double[] k3 = DoubleStream.of(levels).map(l -> 3 * Math.pow(10, (l - at3) / 10)).toArray();
        return new FittedCurve(levels, k3, DoubleStream.of(k3).map(k -> k / 50).toArray(), 0.8);
    }

    private static Speed speed(double repaired) {
        double wow = 0.11 - 0.07 * repaired;
        double[] seconds = IntStream.range(0, 600).mapToDouble(i -> 0.05 + i * 0.1).toArray();
        double[] middle =
                DoubleStream.of(seconds)
                        .map(t -> wow * Math.sin(4.1 * t) + 0.05 * Math.sin(0.31 * t))
                        .toArray();
        double[] rates = IntStream.range(1, 2001).mapToDouble(i -> i * 0.1).toArray();
        double[] peaks =
                DoubleStream.of(rates)
                        .map(
                                f ->
                                        0.004 / Math.sqrt(1 + f)
                                                + 0.0004 * Math.pow(Math.sin(f * 77.7), 2)
                                                + line(f, 0.7, wow)
                                                + line(f, 6.4, 0.03)
                                                + line(f, 9.6, 0.045 - 0.02 * repaired)
                                                + line(f, 100, 0.008))
                        .toArray();
        return new Speed(
                known(-0.412 + 0.39 * repaired, "%", 0.002),
                known(0.11, "%", 0.004),
                known(0.163 - 0.09 * repaired, "%", 0.005),
                known(0.141 - 0.08 * repaired, "%", 0.005),
                known(0.088 - 0.05 * repaired, "%", 0.003),
                known(0.24, "%", 0.008),
                known(0.11, "%", 0.004),
                known(0.09, "%", 0.003),
                known(0.05, "%", 0.002),
                known(0.0016, "%", 0.0003),
                3150.0,
                List.of(
                        new SpeedComponent(
                                0.71,
                                wow,
                                "take-up reel",
                                0.0012,
                                0.0011,
                                0.69,
                                -0.02,
                                0.001,
                                "Gets slower, as a take-up reel does while it fills."),
                        SpeedComponent.steady(
                                9.6, 0.045 - 0.02 * repaired, "capstan", 0.0003, 0.0009),
                        SpeedComponent.steady(6.4, 0.03, null, 0.0007, 0.0009),
                        SpeedComponent.steady(100, 0.008, null, 0.002, 0.0008)),
                new SpeedTrace(
                        seconds,
                        DoubleStream.of(middle).map(m -> m - 0.06).toArray(),
                        DoubleStream.of(middle).map(m -> m + 0.055).toArray()),
                new SpeedSpectrum(rates, peaks),
                12.4,
                60.0,
                257.8,
                known(0.1, "%", 0.004),
                new SpeedFloors(
                        0.0034, 0.0032, 0.0016, 0.0058, 0.0026, 0.0001, 0.0026, 0.0026, 0.0091),
                new SpeedReadings(
                        IntStream.range(0, 110).mapToDouble(i -> 3.25 + i * 0.5).toArray(),
                        IntStream.range(0, 110)
                                .mapToDouble(i -> wow * (1.2 + 0.3 * Math.sin(0.21 * i)))
                                .toArray()),
                new WorstTenSeconds(
                        41.5, known(0.163 - 0.09 * repaired, "%", 0.005), known(0.09, "%", 0.003)),
                List.of("The tone was gone or struck by clicks in 1 place, 0.06 s in all."),
                null,
                null,
                OwnSpeed.of(seconds, rates, middle, peaks),
                known(0.062 - 0.03 * repaired, "%", 0.002),
                new double[] {200, 1500});
    }

    private static double line(double f, double at, double height) {
        return Math.abs(f - at) < 0.049 ? height : 0;
    }

    static Noise noise(String channel, double aWeighted, double hum50Db) {
        double[] f =
                IntStream.rangeClosed(-17, 13)
                        .mapToDouble(n -> 1000 * Math.pow(10, n / 10.0))
                        .toArray();
        double[] level =
                DoubleStream.of(f)
                        .map(
                                hz ->
                                        aWeighted
                                                - 12
                                                + 4 * Math.log10(hz / 1000)
                                                + 8 * Math.exp(-hz / 90)
                                                - 5 * Math.pow(hz / 20_000, 2))
                        .toArray();
        return new Noise(
                channel,
                known(aWeighted + 3.1, "dB", 0.3),
                known(aWeighted, "dB", 0.3),
                known(aWeighted + 8.4, "dB", 0.3),
                known(-aWeighted + 5.2, "dB", 0.4),
                hum50Db < -75
                        ? List.of()
                        : List.of(
                                new HumLine(50, hum50Db, 0.4),
                                new HumLine(150, hum50Db - 7, 0.4),
                                new HumLine(100, hum50Db - 4, 0.4)),
                new NoiseSpectrum(f, level),
                new double[] {22.4, 22_050},
                hum50Db < -75
                        ? Quantity.unknown("No hum stands out of the noise.")
                        : known(50.01, "Hz", 0.01),
                known(-88, "dB", 1),
                known(-52.3, "dB", 0.4));
    }
}
