package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.audio.MemoryAudio;
import offtape.core.dsp.SincInterpolator;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.transport.CaptureMode;
import offtape.report.measure.mode.Capture;
import offtape.report.result.ResultsJson;
import offtape.report.result.Session;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What the recorder and its wiring may do to a return without the machine being another: louder or
 * softer, inverted, exchanged, started earlier, on an offset, at another sample rate. Levels are
 * against the reference tone, times against the programme, so every figure stays what it was, or
 * changes by what was done and nothing else.
 */
class InvarianceTest {

    private static final int RATE = 48_000;

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1, "tapeSpeedMmPerS": 190.5, "seed": 77,
             "transport": {"speedDeviationPercent": 0.4,
              "components": [{"name": "capstan", "frequencyHz": 4.7, "peakPercent": 0.08}],
              "randomFlutter": {"rmsPercent": 0.02, "lowHz": 0.5, "highHz": 100}},
             "heads": {"spacingLossMicrometres": 1.2, "gapMicrometres": 3, "azimuthArcMinutes": 3},
             "saturation": {"levelAtK3ThreePercentDb": 7},
             "electronics": {"right": {"recordGainDb": -0.7}},
             "crosstalk": {"leftToRightDb": -42, "rightToLeftDb": -47},
             "hiss": {"levelDb": -56, "rightDb": -55},
             "hum": {"mainsHz": 50, "lines": [{"harmonic": 1, "levelDb": -50}]}}
            """;

    private static Programme programme;
    private static double[][] returned;
    private static Map<String, JsonNode> base;

    @BeforeAll
    static void play() throws IOException {
        CueSheet sheet = sheet();
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        programme = new Programme(sheet, new MemoryAudio("p.wav", RATE, sound));
        MachineRun run = SimulatedMachine.of(MachineSpec.fromJson(MACHINE)).run(sheet);
        double[][] out = PlayedMachine.sound(run, programme.audio());
        returned = out;
        base = figures(RATE, out[0], out[1]);
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        long at = RATE / 2;
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at, RATE / 2));
        at += RATE;
        cues.add(new Cue.Tone("reference", ChannelSet.BOTH, at, RATE, 1000, 0));
        at += RATE + RATE / 4;
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at, 2 * RATE));
        at += 2 * RATE + RATE / 4;
        for (int level : new int[] {-20, 0}) {
            cues.add(
                    new Cue.Sweep(
                            "sweep" + level, ChannelSet.BOTH, at, 2 * RATE, 20, 20_000, level));
            at += 2 * RATE + RATE / 4;
        }
        List<Cue.Step> steps = new ArrayList<>();
        long first = at;
        for (int level = -8; level <= 10; level += 3) {
            steps.add(new Cue.Step(at, RATE / 2, level));
            at += RATE / 2 + RATE / 10;
        }
        cues.add(new Cue.Ladder("steps", ChannelSet.BOTH, first, at - first, 1000, steps));
        for (ChannelSet set : List.of(ChannelSet.LEFT, ChannelSet.RIGHT)) {
            at += RATE / 4;
            cues.add(new Cue.Tone(set.key() + "-only", set, at, RATE / 2, 1000, 0));
            at += RATE / 2;
        }
        at += RATE / 4;
        cues.add(new Cue.Tone("speed", ChannelSet.BOTH, at, 6 * RATE, 3150, 0));
        at += 6 * RATE + RATE / 4;
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, at, RATE / 2));
        return new CueSheet(RATE, at + RATE, -18, null, cues);
    }

    /** All that was measured, by its place in the results; figures whole, curves value by value. */
    private static Map<String, JsonNode> figures(int rate, double[] left, double[] right)
            throws IOException {
        Session session = new Session(null, null, 190.5, "reference-tape", "", null, "", "");
        MemoryAudio recording = new MemoryAudio("r.wav", rate, left, right);
        String json =
                ResultsJson.write(
                        Measurement.run(
                                programme,
                                recording,
                                session,
                                Capture.of(CaptureMode.REFERENCE_TAPE),
                                List.of()));
        Map<String, JsonNode> found = new TreeMap<>();
        collect("", new ObjectMapper().readTree(json), found);
        found.keySet().removeIf(k -> k.startsWith("/session"));
        return found;
    }

    private static void collect(String place, JsonNode node, Map<String, JsonNode> found) {
        if (node.has("value") || node.isValueNode()) {
            found.put(place, node);
            return;
        }
        node.properties().forEach(f -> collect(place + "/" + f.getKey(), f.getValue(), found));
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            collect(place + "/" + i, node.get(i), found);
        }
    }

    /** A gain that is a power of two rounds nothing: not a digit may change. */
    @Test
    void gainChangesNothing() throws IOException {
        assertEquals(base, figures(RATE, times(0.5, returned[0]), times(0.5, returned[1])));
    }

    /** Inverted, with a gain beside: polarity and phase tell it, and nothing else. */
    @Test
    void polarityTurnsThePhaseAlone() throws IOException {
        double gain = -0.25;
        Map<String, JsonNode> changed =
                figures(RATE, times(gain, returned[0]), times(gain, returned[1]));
        assertEquals("normal", base.get("/timing/polarity").asText());
        assertEquals("inverted", changed.get("/timing/polarity").asText());
        assertEquals(base.keySet(), changed.keySet());
        for (String place : base.keySet()) {
            JsonNode before = base.get(place);
            JsonNode after = changed.get(place);
            if (place.matches("/response/\\d+/phaseDegrees/\\d+")) {
                assertEquals(180, Math.abs(after.asDouble() - before.asDouble()), 1e-6, place);
            } else if (place.equals("/timing/delay")) {
                assertNear(before, after, 1e-4, place);
            } else if (before.isNumber()) {
                // Digits are cut at the ninth, and inverted sound may round to either side.
                double size = Math.abs(before.asDouble());
                assertEquals(before.asDouble(), after.asDouble(), 1e-8 * size, place);
            } else if (!place.equals("/timing/polarity")) {
                assertEquals(before, after, place);
            }
        }
    }

    /** With the cables exchanged every figure of a channel is found at the other one. */
    @Test
    void exchangedChannelsExchangeTheirFigures() throws IOException {
        Map<String, JsonNode> changed = figures(RATE, returned[1], returned[0]);
        int compared = 0;
        for (String place : base.keySet()) {
            JsonNode before = base.get(place);
            if (isFigure(before) && !place.startsWith("/channels") && !place.contains("losses")) {
                assertNear(before, changed.get(exchanged(place)), 0.02, place);
                compared++;
            }
        }
        assertTrue(compared > 50, compared + " figures");
        for (String way : List.of("crosstalkLeftToRight", "crosstalkRightToLeft")) {
            String back =
                    way.equals("crosstalkLeftToRight")
                            ? "crosstalkRightToLeft"
                            : "crosstalkLeftToRight";
            assertNear(base.get("/channels/" + way), changed.get("/channels/" + back), 0.02, way);
        }
        for (String odd : List.of("balance", "interchannelDelay")) {
            JsonNode before = base.get("/channels/" + odd);
            JsonNode after = changed.get("/channels/" + odd);
            assertEquals(
                    -before.get("value").asDouble(),
                    after.get("value").asDouble(),
                    0.02 * before.get("uncertainty").asDouble(),
                    odd);
        }
    }

    /** Responses go left and right by turns, all else is a list of left and right. */
    private static String exchanged(String place) {
        Matcher indexed = Pattern.compile("/(response|distortion|noise)/(\\d+)(.*)").matcher(place);
        return indexed.matches()
                ? "/"
                        + indexed.group(1)
                        + "/"
                        + (Integer.parseInt(indexed.group(2)) ^ 1)
                        + indexed.group(3)
                : place;
    }

    @Test
    void anEarlierStartDelaysTheDelayAlone() throws IOException {
        int frames = 12_345;
        Map<String, JsonNode> changed =
                figures(RATE, after(frames, returned[0]), after(frames, returned[1]));
        double late =
                changed.get("/timing/delay").get("value").asDouble()
                        - base.get("/timing/delay").get("value").asDouble();
        // its windows count from the frames of the recording, so other noise lies at their ends
        double twentieth = base.get("/timing/delay").get("uncertainty").asDouble() / 20;
        assertEquals(1000.0 * frames / RATE, late, twentieth);
        assertAllNear(changed, 0.01, "/timing/delay");
    }

    /** An offset as of a bad converter, -46 dBFS, moves the ripple near 20 Hz a little. */
    @Test
    void anOffsetIsNotHeard() throws IOException {
        Map<String, JsonNode> changed =
                figures(RATE, plus(0.005, returned[0]), plus(-0.003, returned[1]));
        assertAllNear(changed, 1, "none");
    }

    @Test
    void theSampleRateOfTheRecorderIsNotHeard() throws IOException {
        Map<String, JsonNode> changed =
                figures(2 * RATE, twiceTheRate(returned[0]), twiceTheRate(returned[1]));
        assertAllNear(changed, 1, "none");
    }

    private static void assertAllNear(Map<String, JsonNode> changed, double share, String but) {
        for (String place : base.keySet()) {
            if (isFigure(base.get(place)) && !place.equals(but)) {
                assertNear(base.get(place), changed.get(place), share, place);
            }
        }
    }

    private static boolean isFigure(JsonNode node) {
        return node.has("uncertainty") && node.get("value").isNumber();
    }

    /** Within a share of the uncertainty. */
    private static void assertNear(JsonNode a, JsonNode b, double share, String place) {
        assertTrue(b != null && isFigure(b), () -> place + ": " + a + ", then " + b);
        double uncertainty = a.get("uncertainty").asDouble();
        double value = a.get("value").asDouble();
        double room = share * uncertainty + 1e-8 * Math.abs(value);
        assertEquals(
                value, b.get("value").asDouble(), room, () -> place + ": " + a + ", then " + b);
    }

    private static double[] times(double gain, double[] x) {
        return Arrays.stream(x).map(v -> gain * v).toArray();
    }

    private static double[] plus(double offset, double[] x) {
        return Arrays.stream(x).map(v -> v + offset).toArray();
    }

    private static double[] after(int frames, double[] x) {
        double[] out = new double[x.length + frames];
        System.arraycopy(x, 0, out, frames, x.length);
        return out;
    }

    private static double[] twiceTheRate(double[] x) {
        double[] out = new double[2 * x.length];
        Arrays.setAll(out, i -> i % 2 == 0 ? x[i / 2] : SincInterpolator.at(x, i / 2.0));
        return out;
    }
}
