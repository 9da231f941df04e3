package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The chunk against the table of fields of EBU Tech 3285, version 1, and the form of lines of EBU
 * Recommendation R 98, both put down by hand here.
 */
class BroadcastNoteTest {

    private static final int FIXED = 602;

    @TempDir Path dir;

    private Path written(BroadcastNote note, WavFormat format) {
        Path file = dir.resolve("a.wav");
        try (WavWriter writer = WavWriter.create(file, format, note)) {
            writer.write(new double[format.channels()][2]);
        }
        return file;
    }

    /** A text that fills a field with zeros behind it. */
    private static Bytes field(Bytes bytes, String text, int length) {
        return bytes.text(text).zeros(length - text.length());
    }

    private static Bytes chunk(String description, long frame, String history, int size) {
        Bytes bytes = new Bytes().text("bext").u32(size);
        field(bytes, description, 256);
        field(bytes, "Offtape", 32);
        bytes.zeros(32);
        field(bytes, "2031-02-03", 10);
        field(bytes, "04:05:06", 8);
        bytes.u64(frame).u16(1).zeros(64).zeros(190);
        return bytes.text(history);
    }

    @Test
    void liesBeforeTheFormatFieldByField() throws IOException {
        BroadcastNote note =
                new BroadcastNote("A return", "2031-02-03", "04:05:06", 705_888_000, List.of())
                        .through("A=ANALOGUE", "M=stereo", "T=Kitchen deck; tape, blue");
        String history =
                "A=ANALOGUE,M=stereo,T=Kitchen deck; tape; blue\r\n"
                        + "A=PCM,F=48000,W=24,M=stereo,T=Offtape\r\n";
        int size = FIXED + history.length() + (history.length() & 1);
        byte[] expected =
                new Bytes()
                        .text("JUNK")
                        .u32(28)
                        .zeros(28)
                        .raw(chunk("A return", 705_888_000, history, size).array())
                        .zeros(history.length() & 1)
                        .fmt(1, 2, 48000, 6, 24)
                        .data("000000000000 000000000000")
                        .inRiff()
                        .array();
        Path file = written(note, new WavFormat(48000, 2, WavEncoding.PCM_24));
        assertArrayEquals(expected, Files.readAllBytes(file));
    }

    @Test
    void isHandedOnToWhatComesOfTheSound() {
        BroadcastNote note =
                new BroadcastNote("Dry", "2031-02-03", "04:05:06", 1L << 33, List.of("A=ANALOGUE"));
        Path file = written(note, new WavFormat(44100, 1, WavEncoding.FLOAT_32));
        try (AudioFile sound = AudioFiles.open(file)) {
            BroadcastNote wet = sound.describing("Wet");
            assertEquals("Wet", wet.description());
            assertEquals(1L << 33, wet.firstFrame());
            assertEquals("2031-02-03", wet.date());
            assertEquals("04:05:06", wet.time());
            assertEquals(
                    List.of("A=ANALOGUE", "A=PCM,F=44100,W=32,M=mono,T=Offtape; float"),
                    wet.history());
            assertEquals(2, sound.frames());
        }
    }

    @Test
    void aSoundWithoutOneStandsAtTheBeginning() {
        Path file = dir.resolve("plain.wav");
        try (WavWriter w = WavWriter.create(file, new WavFormat(8000, 1, WavEncoding.PCM_16))) {
            w.write(new double[1][4]);
        }
        try (AudioFile sound = AudioFiles.open(file)) {
            assertEquals(BroadcastNote.of("Wet"), sound.describing("Wet"));
        }
    }

    @Test
    void onlyPlainCharactersAreWritten() {
        BroadcastNote note = BroadcastNote.of("Gerät \u001b[31m № 7\u0000 " + "x".repeat(300));
        assertEquals("Ger?t ?[31m ? 7? " + "x".repeat(239), note.description());
        assertThrows(
                IllegalArgumentException.class, () -> new BroadcastNote("", "", "", -1, List.of()));
    }

    /** Sizes that lie and a place that cannot be: the sound is read as ever. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 601, 602, 700})
    void aSenselessOneIsNone(int size) throws IOException {
        byte[] body = new byte[size + (size & 1)];
        if (size >= FIXED) {
            // behind description, names, date and time: a first frame below zero
            Arrays.fill(body, 338, 346, (byte) 0xff);
        }
        byte[] bytes =
                new Bytes()
                        .text("bext")
                        .u32(size)
                        .raw(body)
                        .fmt(1, 1, 8000, 2, 16)
                        .data("0100 0200")
                        .inRiff()
                        .array();
        Path path = dir.resolve("b.wav");
        Files.write(path, bytes);
        try (AudioFile sound = AudioFiles.open(path)) {
            assertEquals(2, sound.frames());
            assertEquals(BroadcastNote.of("x"), sound.describing("x"));
        }
    }
}
