package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same samples in a WAV, an AIFF and a FLAC file give the same figures. */
class FileKindsTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static Path wav;
    private static Path aiff;
    private static Path flac;

    @BeforeAll
    static void threeFiles() throws IOException {
        lab = new Lab(folder);
        double[][] sound = Mini.sound();
        for (int c = 0; c < 2; c++) {
            double[] hiss = Lab.noise(31 + c, 1e-3, 23);
            double[] x = sound[c];
            Arrays.setAll(x, i -> 0.9 * x[i] + hiss[i]);
        }
        byte[] plain = Wav.PCM_24.of(Mini.RATE, sound);
        wav = lab.file("return.wav", plain);
        aiff =
                lab.file(
                        "return.aif",
                        aiff(Arrays.copyOfRange(plain, Wav.DATA_OFFSET, plain.length)));
        // the content says what a file is, not its name
        flac = lab.file("return.wave", Flac.of(Mini.RATE, sound));
    }

    /** Written by the Java platform from the bytes of the sound. */
    private static byte[] aiff(byte[] pcm) throws IOException {
        AudioFormat format = new AudioFormat(Mini.RATE, 24, 2, true, false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (AudioInputStream in =
                new AudioInputStream(new ByteArrayInputStream(pcm), format, pcm.length / 6)) {
            AudioSystem.write(in, AudioFileFormat.Type.AIFF, out);
        }
        return out.toByteArray();
    }

    /** Everything but what is the file's own. */
    private static JsonNode figures(JsonNode results) {
        ObjectNode figures = results.deepCopy();
        ((ObjectNode) figures.get("session")).remove("recordingSha256");
        ((ObjectNode) figures.get("session")).remove("madeAt");
        return figures;
    }

    @Test
    void measureGivesTheSameResults() {
        JsonNode expected = lab.results(wav);
        JsonNode ofFlac = lab.results(flac);
        assertTrue(expected.at("/speed/deviation/value").isNumber(), expected.toString());
        assertEquals(figures(expected), figures(ofFlac));
        // each file has its own digest
        String place = "/session/recordingSha256";
        assertNotEquals(expected.at(place), ofFlac.at(place));
    }

    /** The same samples give the same results, so it is enough that they are the same. */
    @Test
    void anotherContainerHoldsTheSameSamples() {
        assertArrayEquals(samples(wav), samples(aiff));
    }

    private static double[][] samples(Path file) {
        try (AudioFile sound = AudioFiles.open(file)) {
            return sound.read(0, (int) sound.frames());
        }
    }

    @Test
    void speedGivesTheSameFigures() {
        Tool.Outcome expected = Tool.run("speed", wav, "--json");
        assertEquals(0, expected.code(), expected.err());
        assertEquals(expected.out(), Tool.run("speed", aiff, "--json").out());
        assertEquals(expected.out(), Tool.run("speed", flac, "--json").out());
    }

    @Test
    void aCutFlacFileIsMeasuredAsFarAsItGoes() {
        byte[] whole = lab.bytes(flac);
        Path cut = lab.file("cut.flac", Arrays.copyOf(whole, whole.length - 1_000_000));
        JsonNode health = lab.results(cut).get("health");
        String said = health.toString();
        assertTrue(said.contains("\"code\":\"file\""), said);
        assertTrue(said.contains("cut.flac: the header states more sound than the file"), said);
    }

    @Test
    void aDamagedFlacFileIsRefusedWithItsPlace() {
        byte[] hit = lab.bytes(flac);
        // at 6 bytes a frame, 480000 frames in, and what the heads of the blocks add
        hit[480_000 * 6 + 2000] ^= 1;
        Path file = lab.file("hit.flac", hit);
        lab.check(
                new Lab.Case(
                        "damaged",
                        l -> l.measure(file),
                        3,
                        "{lab}/hit.flac is damaged at 10.0 s: the checksum of a block does not"
                                + " agree. Export or copy the recording again."));
    }
}
