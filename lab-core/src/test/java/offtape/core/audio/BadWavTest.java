package offtape.core.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What cannot be used is refused in words. */
class BadWavTest {

    private static final String LINEAR =
            ". Export the recording as linear WAV (16 or 24 bit, or float).";
    private static final String AGAIN = ". Export or copy the recording again.";
    private static final String AS_WAV = ". Export the recording as WAV and name that file.";

    @TempDir Path dir;

    static Stream<Arguments> headers() {
        return Stream.of(
                format(1, 0, 48000, 2, 16, "its header states no channels"),
                format(1, 65, 48000, 130, 16, "its header states 65 channels; up to 64 are read"),
                format(1, 1, 0, 2, 16, "its header states a sample rate of 0 Hz"),
                format(
                        1,
                        1,
                        768001,
                        2,
                        16,
                        "its header states a sample rate of 768001 Hz; up to 768000 Hz are read"),
                format(
                        1,
                        1,
                        0xFFFFFFFFL,
                        2,
                        16,
                        "its header states a sample rate of 4294967295 Hz; up to 768000 Hz are"
                                + " read"),
                format(
                        1,
                        2,
                        48000,
                        4,
                        24,
                        "its header states 4 bytes a frame, but its samples need 6"),
                format(
                        1,
                        2,
                        48000,
                        0,
                        16,
                        "its header states 0 bytes a frame, but its samples need 4"),
                format(1, 1, 48000, 1, 4, "its header states samples of 4 bits; 8 to 32 are read"),
                format(
                        1,
                        1,
                        48000,
                        6,
                        48,
                        "its header states samples of 48 bits; 8 to 32 are read"),
                format(3, 1, 48000, 2, 16, "its header states float of 16 bits"),
                format(2, 1, 48000, 2, 16, "its sound is compressed: ADPCM (tag 0x0002)"),
                format(6, 1, 48000, 2, 16, "its sound is compressed: A-law (tag 0x0006)"),
                format(0x55, 1, 48000, 2, 16, "its sound is compressed: MP3 (tag 0x0055)"),
                format(0x1234, 1, 48000, 2, 16, "its sound is compressed: tag 0x1234"),
                format(0xFFFE, 1, 48000, 2, 16, "its extended format ('fmt ') is too short"));
    }

    private static Arguments format(
            int tag, int channels, long rate, int align, int bits, String said) {
        Bytes content = new Bytes().fmt(tag, channels, rate, align, bits).data("0000").inRiff();
        return Arguments.of(content, " cannot be used: " + said + LINEAR);
    }

    static Stream<Arguments> extended() {
        String pcm = "0100 0000 0000 1000 8000 00aa00389b71";
        return Stream.of(
                extensible(16, "0000 0721 d311 8644c8c1ca000000", 16)
                        .apply(
                                " cannot be used: its samples are coded in a way that is not known"
                                        + " here"),
                extensible(17, pcm.substring(5), 16)
                        .apply(
                                " cannot be used: its header states 17 valid bits in samples of 16"));
    }

    private static Function<String, Arguments> extensible(int valid, String guidTail, int bits) {
        Bytes content =
                new Bytes()
                        .text("fmt ")
                        .u32(40)
                        .fields(0xFFFE, 1, 48000, bits / 8, bits)
                        .u16(22)
                        .u16(valid)
                        .u32(0)
                        .u16(1)
                        .hex(guidTail)
                        .data("0000")
                        .inRiff();
        return said -> Arguments.of(content, said + LINEAR);
    }

    static Stream<Arguments> structures() {
        String damaged = " is a damaged or cut WAV file: ";
        Bytes fmt = new Bytes().fmt(1, 1, 48000, 2, 16);
        return Stream.of(
                Arguments.of(
                        new Bytes().inRiff(),
                        damaged
                                + "neither the format ('fmt ') nor the sound ('data') was found in"
                                + " it"
                                + AGAIN),
                Arguments.of(
                        fmt.inRiff(), damaged + "the sound ('data') was not found in it" + AGAIN),
                Arguments.of(
                        new Bytes().data("0000").raw(fmt.array()).inRiff(),
                        damaged
                                + "the sound ('data') comes without the format ('fmt ') before it"
                                + AGAIN),
                Arguments.of(
                        new Bytes().text("fmt ").u32(14).zeros(14).data("0000").inRiff(),
                        " cannot be used: its format ('fmt ') is too short" + LINEAR),
                // zeros read as ever more empty chunks: the walk has an end
                Arguments.of(
                        new Bytes().zeros(200_000).inRiff(),
                        damaged
                                + "neither the format ('fmt ') nor the sound ('data') was found in"
                                + " it"
                                + AGAIN),
                // sizes and counts of gigabytes cost no memory
                Arguments.of(
                        new Bytes().text("fmt ").u32(0xFFFFFFFFL).raw(fmt.array()).inRiff(),
                        damaged + "the sound ('data') was not found in it" + AGAIN),
                Arguments.of(
                        new Bytes()
                                .text("RF64")
                                .u32(0xFFFFFFFFL)
                                .text("WAVEds64")
                                .u32(0xFFFFFFF0L)
                                .zeros(24)
                                .u32(0xFFFFFFFFL)
                                .zeros(100_000),
                        damaged
                                + "neither the format ('fmt ') nor the sound ('data') was found in"
                                + " it"
                                + AGAIN),
                Arguments.of(
                        new Bytes().text("LIST").u32(0xFFFFFFFFL).raw(fmt.array()).inRiff(),
                        damaged
                                + "neither the format ('fmt ') nor the sound ('data') was found in"
                                + " it"
                                + AGAIN));
    }

    static Stream<Arguments> otherKinds() {
        return Stream.of(
                kind(new Bytes().text("OggS"), "an Ogg file"),
                kind(new Bytes().hex("00000020").text("ftypM4A "), "an MPEG-4 file"),
                kind(new Bytes().text("ID3\4"), "an MP3 file"),
                kind(new Bytes().hex("fffb9064"), "an MP3 file"),
                kind(new Bytes().hex("fff15080"), "an AAC file"),
                kind(new Bytes().text("RIFX"), "a WAV file with its bytes in reverse order (RIFX)"),
                kind(new Bytes().text("caff"), "a Core Audio file"),
                kind(new Bytes().text("riff").hex("2e91cf11"), "a Wave64 file"),
                kind(new Bytes().text("RIFF").u32(99).text("AVI "), "no WAV, AIFF or FLAC file"),
                kind(new Bytes().text("%PDF-1.7"), "a PDF document"),
                kind(new Bytes().text("PK\3\4"), "a ZIP archive"),
                kind(new Bytes().hex("fffe6100"), "a text file"),
                kind(new Bytes().hex("00010203"), "no WAV, AIFF or FLAC file"),
                Arguments.of(
                        new Bytes().text("<!DOCTYPE html><html>"),
                        " is a web page or XML document" + AS_WAV),
                Arguments.of(
                        new Bytes().text("{ \"format\": \"x\" }"), " is a JSON document" + AS_WAV),
                Arguments.of(new Bytes().text("Side A, take 2\r\n"), " is a text file" + AS_WAV),
                Arguments.of(new Bytes(), " is empty" + AGAIN),
                Arguments.of(
                        new Bytes().text("RIFF"),
                        " is only 4 bytes long and no sound file" + AGAIN));
    }

    private static Arguments kind(Bytes start, String words) {
        return Arguments.of(start.zeros(16), " is " + words + AS_WAV);
    }

    @ParameterizedTest
    @MethodSource({"headers", "extended", "structures", "otherKinds"})
    void theSentenceSaysWhatIsWrongAndWhatToDo(Bytes content, String said) throws IOException {
        Path file = content.to(dir.resolve("take one.wav"));
        assertEquals(file + said, refusal(file));
    }

    private static String refusal(Path file) {
        return assertThrows(UnusableInputException.class, () -> AudioFiles.open(file)).getMessage();
    }

    @Test
    void aFolderIsNamedAsOne() {
        assertEquals(
                dir + " is a folder. Name the sound file inside it that is meant.", refusal(dir));
    }

    @Test
    void aMissingFileIsNamed() {
        Path file = dir.resolve("none.wav");
        assertEquals(
                "There is no file " + file + ". Check the name and the folder.", refusal(file));
    }

    @Test
    void theContentDecidesAndNotTheName() throws IOException {
        Path file = dir.resolve("übung 1.flac");
        new Bytes().fmt(1, 1, 48000, 2, 16).data("0040").inRiff().to(file);
        try (AudioFile wav = AudioFiles.open(file)) {
            assertEquals(0.5, wav.read(0, 1)[0][0], 0);
        }
    }

    @Test
    void aFileThatShrinksWhileReadIsRefused() throws IOException {
        Path file = dir.resolve("a.wav");
        byte[] whole = new Bytes().fmt(1, 1, 48000, 2, 16).data("0040 0040").inRiff().array();
        Files.write(file, whole);
        try (AudioFile wav = AudioFiles.open(file)) {
            Files.write(file, Arrays.copyOf(whole, whole.length - 1));
            assertEquals(
                    file
                            + " has become shorter while it was read. Wait until it is finished and"
                            + " start again.",
                    assertThrows(UnusableInputException.class, () -> wav.read(0, 2)).getMessage());
        }
    }
}
