package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.standard.FlutterBand;
import offtape.core.unit.Quantity;
import offtape.reference.Schemas;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.mode.ModeQuestion;
import offtape.report.measure.pass.PassMeasure;
import offtape.report.measure.pass.PassReading;
import offtape.report.render.ReportWriter;
import offtape.report.result.Pass;
import offtape.report.result.PassLine;
import offtape.report.result.Passes;
import offtape.report.result.Results;
import offtape.report.result.ResultsJson;
import offtape.report.result.Session;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** One recording of a machine, replayed four times, from the sound to the report. */
class ReplaysTest {

    private static final int RATE = 16_000;
    private static final double CAPSTAN_HZ = 9.549;

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1, "seed": 3, "mode": "two-pass",
             "transport": {"speedDeviationPercent": 0.4,
               "components": [{"name": "capstan", "frequencyHz": 9.549, "peakPercent": 0.06}],
               "randomFlutter": {"rmsPercent": 0.04, "lowHz": 0.5, "highHz": 60}},
             "hiss": {"levelDb": -62},
             "recorder": {"startSeconds": 0.7, "tailSeconds": 0.5, "noiseDbfs": -90}}
            """;

    private static CueSheet sheet;
    private static final List<MachineRun> RUNS = new ArrayList<>();
    private static Results results;

    @BeforeAll
    static void measure() {
        sheet = sheet();
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        Programme programme = new Programme(sheet, new MemoryAudio("p.wav", RATE, sound));
        List<PassReading> replays = new ArrayList<>();
        Results first = null;
        for (int n = 1; n <= 4; n++) {
            MachineSpec spec = MachineSpec.fromJson(MACHINE).withReplay(n);
            MachineRun run = SimulatedMachine.of(spec).run(sheet);
            RUNS.add(run);
            Measurement found = Measurement.of(programme, play(run, programme, n));
            if (n == 1) {
                Capture capture = new Capture(null, ModeQuestion.NOBODY, null, null, 4);
                first = found.results(session(), capture, List.of());
            }
            replays.add(found.pass("replay-" + n + ".wav", "0".repeat(63) + n, List.of()));
        }
        assertNull(first.speed().passes());
        results = PassMeasure.added(first, replays);
    }

    private static Session session() {
        return new Session(
                null, null, 190.5, null, "2024-05-01T10:00:00Z", null, "test", "0".repeat(64));
    }

    private static MemoryAudio play(MachineRun run, Programme programme, int n) {
        double[][] out = PlayedMachine.sound(run, programme.audio());
        return new MemoryAudio("replay-" + n + ".wav", RATE, out);
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, RATE / 4, RATE / 2));
        cues.add(new Cue.Tone("reference", ChannelSet.BOTH, RATE, RATE, 1000, 0));
        cues.add(new Cue.Tone("speed", ChannelSet.BOTH, 5L * RATE / 2, 13L * RATE, 3150, 0));
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, 16L * RATE, RATE / 2));
        return new CueSheet(RATE, 17L * RATE, -18, 190.5, cues);
    }

    /** Root mean square in a band of a true deviation over the speed tone's middle, percent. */
    private static double rms(FlutterBand band, ToDoubleFunction<Double> deviation) {
        int n = 12_000;
        double[] x = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = 100 * deviation.applyAsDouble(3 + i / 1000.0);
        }
        Spectrum s = RealFft.ofSize(n).forward(x);
        double sum = 0;
        for (int k = 1; k < s.bins(); k++) {
            double gain = band.gain(k * 1000.0 / n);
            sum += 2 * gain * gain * s.power(k) / ((double) n * n);
        }
        return Math.sqrt(sum);
    }

    private static double written(FlutterBand band) {
        MachineRun run = RUNS.get(0);
        return rms(band, s -> run.timeMap().writtenDeviation(run.timeMap().returnSeconds(s)));
    }

    private static double read(FlutterBand band) {
        double squares = 0;
        for (MachineRun run : RUNS) {
            double one =
                    rms(
                            band,
                            s -> run.timeMap().transportDeviation(run.timeMap().returnSeconds(s)));
            squares += one * one / RUNS.size();
        }
        return Math.sqrt(squares);
    }

    private static void holds(double truth, Quantity figure) {
        assertTrue(figure.isKnown(), figure.toString());
        assertEquals(truth, figure.value(), figure.uncertainty() + 0.02 * truth);
    }

    /**
     * Against the simulated motions themselves; 2 % for the ends that the truth takes otherwise.
     */
    @Test
    void writtenAndReadAreToldApart() {
        Passes passes = results.speed().passes();
        holds(written(FlutterBand.WEIGHTED), passes.written().weightedRms());
        holds(read(FlutterBand.WEIGHTED), passes.read().weightedRms());
        holds(written(FlutterBand.FLUTTER), passes.written().flutterRms());
        holds(read(FlutterBand.FLUTTER), passes.read().flutterRms());
        PassLine capstan = passes.lines().get(0);
        assertEquals(CAPSTAN_HZ, capstan.frequencyHz(), 0.02);
        holds(0.06, capstan.writtenPeak());
        holds(0.06, capstan.readPeak());
    }

    @Test
    void wowAndFlutterOfTheSessionIsTheMean() {
        Passes passes = results.speed().passes();
        double[] peaks =
                passes.readings().stream()
                        .mapToDouble(p -> p.figures().weightedPeak().value())
                        .sorted()
                        .toArray();
        assertEquals(4, peaks.length);
        double mean = (peaks[0] + peaks[1] + peaks[2] + peaks[3]) / 4;
        assertEquals(mean, results.speed().weightedPeak().value(), 1e-12);
        assertEquals(mean, passes.mean().weightedPeak().value(), 1e-12);
        assertEquals(peaks[3], passes.highest().weightedPeak().value(), 0);
        assertEquals(peaks[3] - peaks[0], passes.spread().weightedPeak().value(), 1e-12);
        assertTrue(passes.statement().contains("the mean of 4 replays"), passes.statement());
    }

    /** One machine wrote and read 0.4 % fast: nothing is left of it. */
    @Test
    void speedOfTheReplayAgainstTheRecordingIsKnown() {
        assertEquals("two-pass", results.session().mode());
        assertFalse(results.speed().deviation().isKnown());
        Quantity difference = results.speed().passDifference();
        assertEquals(
                100 * (RUNS.get(0).timeMap().meanRate() - 1),
                difference.value(),
                difference.uncertainty());
        for (Pass pass : results.speed().passes().readings()) {
            assertEquals(0, pass.rate().value(), 0.02);
        }
    }

    @Test
    void theModeIsTakenFromTheNumberOfReturns() {
        assertTrue(
                results.health().stream()
                        .anyMatch(
                                n ->
                                        n.code().equals("mode-inferred")
                                                && n.message().startsWith("Several returns")));
    }

    @Test
    void resultsKeepTheSchema() throws IOException {
        Set<?> complaints =
                JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                        .getSchema(Schemas.results())
                        .validate(new ObjectMapper().readTree(ResultsJson.write(results)));
        assertEquals(Set.of(), complaints);
    }

    @Test
    void reportAndTableHoldEveryReplay() {
        String page = ReportWriter.html(results);
        String table = ReportWriter.csv(results).get("speed-passes.csv");
        for (int n = 1; n <= 4; n++) {
            assertTrue(page.contains("replay-" + n + ".wav"));
            assertTrue(table.contains("\r\nreplay,replay-" + n + ".wav,"), table);
        }
        assertEquals(1 + 4 + 5, table.lines().count());
        assertTrue(page.contains("What lies on the tape and what the replay adds"));
    }
}
