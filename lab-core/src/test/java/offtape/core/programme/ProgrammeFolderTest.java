package offtape.core.programme;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.OutputFolder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProgrammeFolderTest {

    private static final String APART =
            ", so the two do not belong together. Write the programme again with \"offtape"
                    + " prepare\".";

    private final CueSheet sheet =
            new CueSheet(
                    44_100,
                    50_000,
                    -18,
                    190.5,
                    List.of(
                            new Cue.Marker("start", ChannelSet.BOTH, 100, 22_050),
                            new Cue.Tone("tone", ChannelSet.LEFT, 25_000, 20_000, 1000, 14)));

    @TempDir Path temp;
    private Path dir;

    @BeforeEach
    void write() throws IOException {
        dir = temp.toRealPath().resolve("programme");
        try (OutputFolder folder = OutputFolder.open(dir, false)) {
            ProgrammeWriter.write(sheet, folder);
            folder.commit();
        }
    }

    /** 24 bits without dither round to half a step of 2⁻²³. */
    @Test
    void whatIsWrittenReadsBack() {
        try (Programme programme = ProgrammeFolder.open(dir)) {
            assertEquals(sheet, programme.sheet());
            assertEquals(50_000, programme.audio().frames());
            double[][] heard = programme.audio().read(0, 50_000);
            double[][] meant = new ProgrammeSignal(sheet).read(0, 50_000);
            for (int c = 0; c < 2; c++) {
                for (int i = 0; i < 50_000; i++) {
                    assertEquals(meant[c][i], heard[c][i], 0.501 * 0x1p-23);
                }
            }
        }
    }

    @Test
    void aFolderWithoutItsFilesIsRefused() throws IOException {
        Path missing = dir.resolve("elsewhere");
        assertRefused(
                missing,
                missing + " is not a folder. Give the folder that \"offtape prepare\" wrote.");
        Files.delete(dir.resolve("programme.wav"));
        String sound = assertThrows(UnusableInputException.class, this::open).getMessage();
        assertTrue(sound.contains(dir.resolve("programme.wav").toString()), sound);
        Files.delete(dir.resolve("programme.json"));
        assertRefused(
                dir,
                "The cue sheet "
                        + dir.resolve("programme.json")
                        + " cannot be read. Give the folder that \"offtape prepare\" wrote, with"
                        + " programme.json and programme.wav in it.");
    }

    @Test
    void soundAndSheetMustBelongTogether() throws IOException {
        sound(48_000, 2, 50_000);
        assertRefused(
                dir,
                dir
                        + ": programme.wav has 48000 frames a second, the cue sheet says 44100"
                        + APART);
        sound(44_100, 2, 49_999);
        assertRefused(
                dir, dir + ": programme.wav has 49999 frames, the cue sheet says 50000" + APART);
        sound(44_100, 3, 50_000);
        assertRefused(dir, dir + ": programme.wav has 3 channels instead of two" + APART);
    }

    /** A longer sound, and a single channel that stands for both, are fine. */
    @Test
    void soundMayBeLongerOrHaveOneChannel() throws IOException {
        sound(44_100, 1, 60_000);
        try (Programme programme = ProgrammeFolder.open(dir)) {
            assertEquals(1, programme.audio().channels());
        }
    }

    private void open() {
        ProgrammeFolder.open(dir).close();
    }

    private void sound(int rate, int channels, int frames) throws IOException {
        Path file = dir.resolve("programme.wav");
        Files.delete(file);
        WavFormat format = new WavFormat(rate, channels, WavEncoding.PCM_24);
        try (WavWriter wav = WavWriter.create(file, format)) {
            wav.write(new double[channels][frames]);
        }
    }

    private static void assertRefused(Path folder, String sentence) {
        Exception e =
                assertThrows(
                        UnusableInputException.class, () -> ProgrammeFolder.open(folder).close());
        assertEquals(sentence, e.getMessage());
    }
}
