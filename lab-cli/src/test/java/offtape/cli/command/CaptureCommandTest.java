package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.StreamRequest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The whole way: a programme is played, comes back, is written, and measured. */
@Timeout(120)
class CaptureCommandTest {

    @TempDir private Path folder;

    private CaptureBench bench;

    @BeforeEach
    void aBench() {
        bench = new CaptureBench(folder);
    }

    @Test
    void theProgrammeComesBackSampleBySample() {
        Tool.Outcome outcome = bench.capture();
        assertEquals(0, outcome.code(), outcome.err());
        assertEquals("", outcome.out());
        assertTrue(
                outcome.err().contains("\nWritten: " + bench.path("return.wav") + "\n"),
                outcome.err());
        assertEquals(Set.of("programme", "return.wav"), bench.names());
        double[][] sent = bench.read("programme/programme.wav", 0, CaptureBench.RATE);
        double[][] back =
                bench.read("return.wav", CaptureBench.LEAD + MadeUpLayer.DELAY, CaptureBench.RATE);
        assertArrayEquals(sent[0], back[0]);
        assertArrayEquals(sent[1], back[1]);
        // lead, programme and 2 s of tail, and what is recorded until that was noticed
        assertTrue(bench.frames("return.wav") >= 3.5 * CaptureBench.RATE);
    }

    /**
     * Here the recording goes into the session's folder. The lead of 0.5 s and 1234 frames of 48
     * kHz are 525.708 ms.
     */
    @Test
    void isMeasuredAtOnce() throws IOException {
        Path programme = Mini.write(folder.resolve("mini"));
        bench.layer.faults = s -> s.file = folder.resolve("session/mini.incomplete.wav");
        Tool.Outcome outcome =
                Tool.run(
                        new SoundLayers(List.of(bench.layer)),
                        "capture",
                        "--programme",
                        programme,
                        "--out",
                        folder.resolve("session/mini.wav"),
                        "--measure",
                        folder.resolve("session"),
                        "--mode",
                        "loopback",
                        "--machine-name",
                        "Loop");
        assertEquals(0, outcome.code(), outcome.err());
        assertTrue(outcome.err().contains("Written: " + folder.resolve("session/mini.wav")));
        assertTrue(
                outcome.err().endsWith("Report: " + folder.resolve("session/report.html") + "\n"));
        JsonNode results =
                new ObjectMapper().readTree(folder.resolve("session/results.json").toFile());
        assertEquals("Loop", results.at("/session/machineName").textValue());
        assertEquals(525.708, results.at("/timing/delay/value").doubleValue(), 0.002);
    }

    @Test
    void whatIsThereStaysUnlessForced() throws IOException {
        Files.writeString(bench.path("return.wav"), "mine");
        Tool.Outcome refused = bench.capture();
        assertEquals(2, refused.code());
        assertEquals(
                "offtape: "
                        + bench.path("return.wav")
                        + " exists already. Choose another name or add --force.\n",
                refused.err());
        assertTrue(bench.layer.requests.isEmpty(), "refused before anything is opened");
        assertEquals("mine", Files.readString(bench.path("return.wav")));
        assertEquals(0, bench.capture("--force").code());
        assertTrue(bench.frames("return.wav") > CaptureBench.RATE);
    }

    @Test
    void whatIsAskedForReachesTheDevices() {
        Tool.Outcome outcome =
                bench.capture(
                        "--output",
                        "A",
                        "--output-channels",
                        "5,6",
                        "--input",
                        "B",
                        "--input-channels",
                        "3,4",
                        "--buffer",
                        "500");
        assertEquals(0, outcome.code(), outcome.err());
        StreamRequest request = bench.layer.requests.get(0);
        assertEquals(new StreamRequest.End("A", ChannelPair.parse("5,6")), request.output());
        assertEquals(new StreamRequest.End("B", ChannelPair.parse("3,4")), request.input());
        assertEquals(CaptureBench.RATE, request.sampleRateHz());
        assertEquals(0.5, request.bufferSeconds());
    }

    @Test
    void oneChannelIsEnough() {
        Tool.Outcome outcome = bench.capture("--input-channels", "3", "--output-channels", "3");
        assertEquals(0, outcome.code(), outcome.err());
        double[][] sent = bench.read("programme/programme.wav", 0, CaptureBench.RATE);
        double[][] back =
                bench.read("return.wav", CaptureBench.LEAD + MadeUpLayer.DELAY, CaptureBench.RATE);
        assertEquals(1, back.length);
        assertArrayEquals(sent[0], back[0]);
    }

    @Test
    void quietIsQuiet() {
        assertEquals(new Tool.Outcome(0, "", ""), bench.capture("--quiet"));
    }

    @Test
    void silenceIsNamed() {
        bench.layer.faults = s -> s.muted = true;
        Tool.Outcome outcome = bench.capture();
        assertEquals(0, outcome.code());
        assertTrue(outcome.err().contains("\nMind: nothing but digital silence"), outcome.err());
        assertTrue(outcome.err().startsWith("Recording 0:00, 0:03 left  silent  silent\n"));
    }

    @Test
    void gapsAndLossesAreNamedWithTheirPlaces() {
        bench.layer.faults =
                s -> {
                    s.underrunAfter = 1;
                    s.overrunAfter = 2L * CaptureBench.RATE;
                };
        Tool.Outcome outcome = bench.capture();
        assertEquals(0, outcome.code());
        assertTrue(
                outcome.err()
                        .contains(
                                "s into the recording, the computer was late and a gap was played."),
                outcome.err());
        assertTrue(
                outcome.err().contains("Mind: about 2.0 s into the recording, sound was lost, or"),
                outcome.err());
    }

    @Test
    void aLostDeviceLeavesTheIncompleteRecordingAndItsName() {
        bench.layer.faults = s -> s.lostAfter = CaptureBench.RATE;
        for (String name : List.of("return.incomplete.wav", "return.incomplete-2.wav")) {
            Tool.Outcome outcome = bench.capture();
            assertEquals(4, outcome.code());
            assertTrue(
                    outcome.err()
                            .endsWith(
                                    "offtape: The input is gone. What was recorded is kept in "
                                            + bench.path(name)
                                            + ".\n"),
                    outcome.err());
            // what was handed over in whole pieces of 20 ms
            assertEquals(CaptureBench.RATE, bench.frames(name));
        }
        assertEquals(
                Set.of("programme", "return.incomplete.wav", "return.incomplete-2.wav"),
                bench.names());
    }

    @Test
    void aDeviceThatIsLostAtOnceLeavesNothing() {
        bench.layer.faults = s -> s.lostAfter = 0;
        assertEquals(new Tool.Outcome(4, "", "offtape: The input is gone.\n"), bench.capture());
        assertEquals(Set.of("programme"), bench.names());
    }

    @Test
    void whatGetsInTheWayMeanwhileCostsNothing() {
        bench.layer.faults =
                s -> {
                    s.stoppedAfter = CaptureBench.RATE;
                    s.stopping = () -> bench.path("return.wav").toFile().mkdir();
                };
        Tool.Outcome outcome = bench.capture();
        assertEquals(2, outcome.code());
        assertTrue(
                outcome.err().contains("return.wav is a folder, and a file is to go there."),
                outcome.err());
        Path kept = bench.path("return.wav-kept");
        assertTrue(
                outcome.err().endsWith("What was made is kept in " + kept + ".\n"), outcome.err());
        assertTrue(bench.frames("return.wav-kept/return.wav") >= 3.5 * CaptureBench.RATE);
    }
}
