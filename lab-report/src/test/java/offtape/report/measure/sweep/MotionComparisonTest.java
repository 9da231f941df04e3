package offtape.report.measure.sweep;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import offtape.core.machine.ResponseTruth;
import offtape.core.programme.ExponentialSweep;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.Response;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the tape's motion does to a response, by four ways of getting it from the same return: plain
 * deconvolution, deconvolution once the time base is set right by the sweep's own phase, following
 * the sweep, and following it once the time base is set right. Worst error of twelfth-octave points
 * from 40 Hz to 16 kHz on one channel.
 */
@Tag("study")
class MotionComparisonTest {

    private static final String MACHINE =
            """
            "seed": 5, "transport": {%s},
            "heads": {"bumps": [{"frequencyHz": 70, "gainDb": 1.8, "q": 1.2}]},
            "electronics": {"lowerEdgeHz": 28, "lowerOrder": 2, "upperEdgeHz": 17000},
            "hiss": {"levelDb": -58},
            "recorder": {"startSeconds": 0.7, "tailSeconds": 1}
            """;

    private static final double[] HZ =
            IntStream.rangeClosed(-55, 48).mapToDouble(n -> 1000 * Math.pow(2, n / 12.0)).toArray();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "still | \"speedDeviationPercent\": 0",
                "0.12 % at 4 Hz | \"components\": [{\"frequencyHz\": 4, \"peakPercent\": 0.12}]",
                "0.2 % at 9.55 Hz | \"components\": [{\"frequencyHz\": 9.55, \"peakPercent\": 0.2}]",
                "0.3 % random | \"randomFlutter\": {\"rmsPercent\": 0.3, \"lowHz\": 0.5, \"highHz\": 120}",
                "transport-a | \"motion\": {\"recorded\": \"transport-a\"}",
                "transport-b | \"motion\": {\"recorded\": \"transport-b\"}",
                "transport-c | \"motion\": {\"recorded\": \"transport-c\"}"
            })
    void followingStandsMotion(String name, String transport) {
        SweepBench bench = SweepBench.of(String.format(MACHINE, transport), 12, -20);
        ExponentialSweep sweep = ExponentialSweep.of(bench.cue(0), SweepBench.RATE);
        double[] sound =
                bench.ret()
                        .programme()
                        .audio()
                        .read(bench.cue(0).startFrame(), (int) bench.cue(0).frames())[0];
        PlainDeconvolution plain = new PlainDeconvolution(sweep, SweepBench.RATE, sound);
        double[] deconvolved =
                worst(bench, plain.levelDb(Unwarped.sweep(bench, 0, 0, false), sound, HZ));
        double[] unwarped =
                worst(bench, plain.levelDb(Unwarped.sweep(bench, 0, 0, true), sound, HZ));
        double[] followed = worst(bench, values(bench.response(0, 0)));
        double[] both = worst(bench, values(unwarpedThenFollowed(bench)));
        System.out.printf(
                Locale.ROOT,
                "%-18s deconvolved %5.3f %5.3f  unwarped, deconvolved %5.3f %5.3f"
                        + "  followed %5.3f %5.3f  unwarped, followed %5.3f %5.3f dB%n",
                name,
                deconvolved[0],
                deconvolved[1],
                unwarped[0],
                unwarped[1],
                followed[0],
                followed[1],
                both[0],
                both[1]);
        assertTrue(followed[0] < 0.1, name);
        assertTrue(followed[1] < 0.15, name);
        boolean moving = !name.equals("still");
        for (int part = 0; moving && part < 2; part++) {
            assertTrue(followed[part] < 0.2 * deconvolved[part], name + ": the plain way is worse");
        }
    }

    private static Response unwarpedThenFollowed(SweepBench bench) {
        ProgrammeReturn ret = Unwarped.asReturn(bench, 0);
        return new ResponseMeasure(
                        new SweepFollower(bench.cue(0), SweepBench.RATE).follow(ret),
                        0,
                        bench.noise().densities()[0],
                        1,
                        new Leakage(Leakage.Leak.NONE, Leakage.Leak.NONE),
                        0)
                .measure("left", OptionalDouble.empty());
    }

    private static double[] values(Response r) {
        return Arrays.stream(HZ)
                .map(hz -> SweepBench.at(r.frequencyHz(), r.magnitudeDb(), hz))
                .toArray();
    }

    /** Worst error to 10 kHz, and above. */
    private static double[] worst(SweepBench bench, double[] db) {
        ResponseTruth truth = bench.truth(0);
        double[] worst = new double[2];
        for (int i = 0; i < HZ.length; i++) {
            double right = SweepBench.at(truth.frequencyHz(), truth.magnitudeDb(), HZ[i]);
            int part = HZ[i] <= 10_000 ? 0 : 1;
            worst[part] = Math.max(worst[part], Math.abs(db[i] - right));
        }
        return worst;
    }
}
