package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.music.MadeUpMusic;
import offtape.core.music.MadeUpMusic.Kind;
import offtape.reference.Schemas;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Returns put in time with their originals. */
class RealignCommandTest {

    private static final int RATE = 44_100;
    private static final int LATE = 3210;

    /** Where the original lies in its project: one minute after its midnight. */
    private static final long PLACE = 60L * RATE;

    @TempDir private Path folder;

    private Path write(String name, double[]... samples) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        WavFormat format = new WavFormat(RATE, samples.length, WavEncoding.PCM_24);
        BroadcastNote note = new BroadcastNote(name, "", "", PLACE, List.of("A=ANALOGUE"));
        try (WavWriter wav = WavWriter.create(file, format, note)) {
            wav.write(samples);
        }
        return file;
    }

    private static double[] late(double[] x, double gain) {
        double[] y = new double[x.length + 2 * LATE];
        for (int i = 0; i < x.length; i++) {
            y[i + LATE] = gain * x[i];
        }
        return y;
    }

    private static double[][] read(Path file) {
        try (AudioFile sound = AudioFiles.open(file)) {
            return sound.read(0, (int) sound.frames());
        }
    }

    private static double[][] drums(int seed) {
        return MadeUpMusic.of(Kind.DRUMS, RATE, 4, seed).read(0, 4 * RATE);
    }

    @Test
    void aPathOfWholeFramesGivesTheSamplesBackAndSaysHowFarToSlide() throws IOException {
        double[][] x = drums(1);
        Path dry = write("dry.wav", x);
        Path wet = write("wet.wav", late(x[0], 1), late(x[1], -1));
        Path out = folder.resolve("out.wav");
        Tool.Outcome done = Tool.run("realign", dry, wet, "--out", out, "--json");
        assertEquals(0, done.code(), done.err());
        try (AudioFile back = AudioFiles.open(out)) {
            BroadcastNote said = back.describing("x");
            assertEquals(PLACE, said.firstFrame());
            assertEquals(
                    List.of(
                            "A=ANALOGUE",
                            "A=PCM,F=44100,W=24,M=stereo,T=Offtape",
                            "A=PCM,F=44100,W=24,M=stereo,T=Offtape"),
                    said.history());
        }
        assertArrayEquals(read(dry)[0], read(out)[0]);
        assertArrayEquals(read(dry)[1], read(out)[1], 1.3e-7);
        assertTrue(done.err().contains("slide it 3210.00 samples (72.789 ms) earlier"), done.err());
        String text = Files.readString(folder.resolve("out.realign.json"));
        assertEquals(text, done.out());
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
        assertEquals(
                Set.of(), factory.getSchema(Schemas.realign()).validate(text, InputFormat.JSON));
        JsonNode json = new ObjectMapper().readTree(text);
        assertEquals(LATE, json.at("/delaySamples").asDouble());
        assertEquals("inverted", json.at("/channels/1/polarity").asText());
        assertEquals(2, Tool.run("realign", dry, wet, "--out", dry, "--force").code());
    }

    @Test
    void aClippedReturnIsDoneAndTold() throws IOException {
        double[][] x = drums(1);
        Path dry = write("dry.wav", x[0]);
        double[] loud = late(x[0], 4);
        long clipped = Arrays.stream(loud).filter(v -> Math.abs(v) >= 1).count();
        assertTrue(clipped > 100);
        double[] cut = Arrays.stream(loud).map(v -> Math.max(-1, Math.min(1, v))).toArray();
        Path wet = write("wet.wav", cut);
        Tool.Outcome done =
                Tool.run("realign", dry, wet, "--out", folder.resolve("out.wav"), "--json");
        assertEquals(0, done.code(), done.err());
        assertTrue(
                done.err().contains("samples at full scale in the return on channel 1"),
                done.err());
        JsonNode warnings = new ObjectMapper().readTree(done.out()).at("/warnings");
        assertTrue(warnings.toString().contains("send it lower"), done.out());
    }

    @Test
    void whatIsNotOfTheTrackIsRefused() throws IOException {
        Path dry = write("dry.wav", drums(1));
        Path other = write("other.wav", MadeUpMusic.of(Kind.VOICE, RATE, 4, 9).read(0, 4 * RATE));
        Path silence = write("silence.wav", new double[4 * RATE], new double[4 * RATE]);
        Path out = folder.resolve("out.wav");
        Tool.Outcome refused = Tool.run("realign", dry, other, "--out", out);
        assertEquals(3, refused.code());
        assertTrue(refused.err().contains("dry.wav is not heard in other.wav"), refused.err());
        Tool.Outcome silent = Tool.run("realign", dry, silence, "--out", out);
        assertEquals(3, silent.code());
        assertTrue(silent.err().contains("silence.wav is silent"), silent.err());
        assertTrue(Files.notExists(out));
    }

    @Test
    void foldersAreDonePairByPair() throws IOException {
        double[][] x = drums(1);
        write("stems/drums.wav", x);
        write("stems/alone.wav", x);
        write("returns/drums-tape.wav", late(x[0], 0.5), late(x[1], 0.5));
        Tool.Outcome done =
                Tool.run(
                        "realign",
                        folder.resolve("stems"),
                        folder.resolve("returns"),
                        "--out",
                        folder.resolve("back"));
        assertEquals(3, done.code());
        assertTrue(done.err().contains("alone.wav has no return"), done.err());
        assertTrue(Files.exists(folder.resolve("back/drums.wav")));
        assertTrue(Files.exists(folder.resolve("back/drums.realign.json")));
    }
}
