package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.Quantity;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Channels;
import offtape.report.result.HealthNote;
import offtape.report.result.Results;
import offtape.report.result.Session;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Channels exchanged, inverted, weak or dead, each way and together: what is wrong is named. */
class WiringTest {

    private static final int RATE = 8000;

    private static final Set<String> CODES =
            Set.of(
                    "swapped-channels",
                    "opposite-channels",
                    "weak-channel",
                    "dead-channel",
                    "markers-disagree",
                    "level-changes");

    private static final String MACHINE =
            """
            {"format": "offtape-machine", "version": 1,
             "crosstalk": {"leftToRightDb": -42, "rightToLeftDb": -47},
             "hiss": {"levelDb": -58}}
            """;

    private static Programme programme;
    private static double[][] returned;

    @BeforeAll
    static void play() {
        CueSheet sheet = sheet();
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        programme = new Programme(sheet, new MemoryAudio("p.wav", RATE, sound));
        MachineRun run = SimulatedMachine.of(MachineSpec.fromJson(MACHINE)).run(sheet);
        double[][] out = PlayedMachine.sound(run, programme.audio());
        returned = out;
    }

    private static CueSheet sheet() {
        List<Cue> cues = new ArrayList<>();
        long at = RATE / 2;
        cues.add(new Cue.Marker("start", ChannelSet.BOTH, at, RATE / 2));
        at += RATE;
        cues.add(new Cue.Tone("reference", ChannelSet.BOTH, at, RATE, 1000, 0));
        at += RATE + RATE / 4;
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at, RATE));
        at += RATE + RATE / 4;
        cues.add(new Cue.Sweep("sweep", ChannelSet.BOTH, at, 2 * RATE, 20, 3500, -20));
        at += 3 * RATE + RATE / 4;
        List<Cue.Step> steps = List.of(new Cue.Step(at, RATE, 0));
        cues.add(new Cue.Ladder("steps", ChannelSet.BOTH, at, RATE, 1000, steps));
        at += RATE + RATE / 4;
        for (ChannelSet set : List.of(ChannelSet.LEFT, ChannelSet.RIGHT)) {
            cues.add(new Cue.Tone(set.key() + "-only", set, at, RATE, 1000, 0));
            at += RATE + RATE / 4;
        }
        cues.add(new Cue.Marker("end", ChannelSet.BOTH, at, RATE / 2));
        return new CueSheet(RATE, at + RATE, -18, null, cues);
    }

    private static double[] times(double gain, double[] x) {
        double[] out = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            out[i] = gain * x[i];
        }
        return out;
    }

    /** What a channel without signal holds: hiss, hum, and the other channel's crosstalk. */
    private static double[] dead(double hiss, double hum, double crosstalk, double[] other) {
        Random random = new Random(8);
        double[] out = new double[other.length];
        for (int i = 0; i < out.length; i++) {
            out[i] =
                    hiss * random.nextGaussian()
                            + hum * Math.sin(2 * Math.PI * 50 * i / RATE)
                            + crosstalk * other[i];
        }
        return out;
    }

    private static Results measured(double[] left, double[] right) {
        Session session = new Session(null, null, null, "reference-tape", "", null, "", "");
        MemoryAudio recording = new MemoryAudio("r.wav", RATE, left, right);
        return Measurement.run(
                programme, recording, session, Capture.of(CaptureMode.REFERENCE_TAPE), List.of());
    }

    private static Set<String> codes(Results results) {
        return results.health().stream()
                .map(HealthNote::code)
                .filter(CODES::contains)
                .collect(Collectors.toSet());
    }

    private static String message(Results results, String code) {
        return results.health().stream()
                .filter(n -> n.code().equals(code))
                .findFirst()
                .orElseThrow()
                .message();
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "-1, 1", "1, -0.1", "0.1, 1"})
    void exchangedInvertedAndWeakAreNamedTogether(double left, double right) {
        for (boolean exchanged : new boolean[] {false, true}) {
            double[] l = times(left, returned[exchanged ? 1 : 0]);
            double[] r = times(right, returned[exchanged ? 0 : 1]);
            Results results = measured(l, r);
            Set<String> codes = codes(results);
            String which = "exchanged " + exchanged + ": " + codes;
            assertEquals(exchanged, codes.contains("swapped-channels"), which);
            assertEquals(left * right < 0, codes.contains("opposite-channels"), which);
            boolean weak = Math.abs(left) != Math.abs(right);
            assertEquals(weak, codes.contains("weak-channel"), which);
            if (weak) {
                String name = Math.abs(left) < Math.abs(right) ? "left" : "right";
                assertTrue(message(results, "weak-channel").startsWith("The " + name));
            }
            assertFalse(codes.contains("dead-channel"), which);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 0, 0",
        "1, 0, 0, 0",
        "0, 1e-4, 0, 0",
        "0, 1e-4, 0.01, 0.01",
        "1, 1e-3, 0.03, 0.01"
    })
    void aDeadChannelIsNamedAndSaysNothing(int channel, double hiss, double hum, double crosstalk) {
        double[] other = returned[1 - channel];
        double[] silent = dead(hiss, hum, crosstalk, other);
        Results results = channel == 0 ? measured(silent, other) : measured(other, silent);
        String name = channel == 0 ? "left" : "right";
        assertEquals(Set.of("dead-channel"), codes(results));
        assertTrue(message(results, "dead-channel").startsWith("The " + name));
        assertDead(results, name, channel);
        assertPairUnknown(results.channels());
        String alive = channel == 0 ? "right" : "left";
        assertTrue(
                results.response().stream()
                        .filter(r -> r.channel().equals(alive))
                        .allMatch(r -> r.frequencyHz().length > 0));
    }

    private static void assertDead(Results results, String name, int channel) {
        var response = results.response().stream().filter(r -> r.channel().equals(name)).toList();
        assertEquals(1, response.size());
        assertEquals(0, response.get(0).frequencyHz().length);
        assertFalse(response.get(0).upperEdge().isKnown());
        var ladder = results.distortion().stream().filter(d -> d.channel().equals(name)).toList();
        assertEquals(1, ladder.size());
        assertFalse(ladder.get(0).maximumOutputLevel().isKnown());
        assertFalse(results.noise().get(channel).aWeighted().isKnown());
    }

    private static void assertPairUnknown(Channels c) {
        for (Quantity q :
                List.of(
                        c.balance(),
                        c.crosstalkLeftToRight(),
                        c.crosstalkRightToLeft(),
                        c.interchannelDelay(),
                        c.azimuth(),
                        c.monoLossAt10kHz(),
                        c.interchannelDelayWander())) {
            assertFalse(q.isKnown());
            assertTrue(q.reason().contains("dead"), q.reason());
        }
        assertEquals(List.of(), c.crosstalk());
    }

    /** The other channel is read as before; where the programme lies is told by it alone now. */
    @Test
    void aDeadChannelLeavesTheOtherAlone() {
        double[] silent = dead(1e-4, 0, 0, returned[0]);
        double alone = measured(returned[0], silent).noise().get(0).spectrum().levelDb()[10];
        double pair = measured(returned[0], returned[1]).noise().get(0).spectrum().levelDb()[10];
        assertEquals(pair, alone, 1e-3);
    }
}
