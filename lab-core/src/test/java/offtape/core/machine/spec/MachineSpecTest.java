package offtape.core.machine.spec;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import offtape.core.transport.CaptureMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MachineSpecTest {

    private static final String HEAD = "{\"format\":\"offtape-machine\",\"version\":1";

    @TempDir private Path folder;

    @Test
    void absentMembersArePerfect() {
        MachineSpec spec = MachineSpec.fromJson(HEAD + "}");
        assertEquals(CaptureMode.REFERENCE_TAPE, spec.mode());
        assertEquals(190.5, spec.tapeSpeedMmPerS());
        assertEquals(TransportSpec.PERFECT, spec.transport());
        assertNull(spec.saturation());
        assertNull(spec.hiss());
    }

    @Test
    void writtenAndReadAgainIsTheSame() {
        MachineSpec spec =
                MachineSpec.fromJson(
                        HEAD
                                + ",\"mode\":\"two-pass\",\"name\":\"Ü\",\"transport\":{\"components\":["
                                + "{\"diameterMm\":6.35,\"peakPercent\":0.1}]},\"saturation\":"
                                + "{\"kind\":\"cubic\",\"levelAtK3ThreePercentDb\":6},\"dropouts\":"
                                + "[{\"channel\":\"left\",\"atSeconds\":1,\"milliseconds\":10,"
                                + "\"depthDb\":6}],\"heads\":{\"bumps\":[{\"frequencyHz\":60,"
                                + "\"gainDb\":2}]}}");
        assertEquals(spec, MachineSpec.fromJson(spec.toJson()));
        assertTrue(spec.toJson().contains("\"mode\" : \"two-pass\""));
    }

    @Test
    void faultsAreWrittenAndReadAgain() {
        MachineSpec spec =
                MachineSpec.fromJson(
                        HEAD
                                + ",\"bias\":{\"overDb\":1,\"rightDb\":-3},\"swapped\":true,"
                                + "\"residue\":{\"levelDb\":-40,\"shiftSeconds\":12.5},"
                                + "\"heads\":{\"magnetisation\":{\"secondHarmonicPercent\":1}},"
                                + "\"electronics\":{\"left\":{\"thirdHarmonicPercent\":2}},"
                                + "\"transport\":{\"belt\":{\"slipPercent\":1},\"components\":["
                                + "{\"frequencyHz\":2,\"peakPercent\":0.1,\"harmonics\":[1,0.5]}]}}");
        assertEquals(1, spec.bias().channelDb(0));
        assertEquals(-3, spec.bias().channelDb(1));
        assertEquals(0.0, spec.electronics().channel(1).thirdHarmonicPercent());
        assertEquals(spec, MachineSpec.fromJson(spec.toJson()));
        assertEquals(spec, spec.withReplay(2).withReplay(1));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'\"wobble\":1'|wobble",
                "'\"transport\":{\"wobble\":1}'|transport.wobble",
                "'\"transport\":{\"components\":[{\"frequencyHz\":4,\"peakPercent\":0.1},"
                        + "{\"frequencyHz\":4,\"peakPercent\":99}]}'|transport.components[1]",
                "'\"transport\":{\"components\":[{\"peakPercent\":1}]}'|frequencyHz",
                "'\"transport\":{\"components\":[null]}'|empty entry",
                "'\"tapeSpeedMmPerS\":1e999'|tapeSpeedMmPerS",
                "'\"tapeSpeedMmPerS\":\"fast\"'|tapeSpeedMmPerS",
                "'\"tapeSpeedMmPerS\":\"190.5\"'|tapeSpeedMmPerS",
                "'\"mode\":\"sideways\"'|off-tape",
                "'\"mode\":7'|mode",
                "'\"seed\":1.5'|seed",
                "'\"hiss\":{}'|levelDb",
                "'\"saturation\":{\"kind\":\"soft\",\"levelAtK3ThreePercentDb\":6}'|tanh or cubic",
                "'\"dropouts\":[{\"channel\":\"middle\",\"atSeconds\":1,\"milliseconds\":10,"
                        + "\"depthDb\":6}]'|both, left or right",
                "'\"recorder\":{\"bits\":64}'|recorder",
                "'\"seed\":1,\"seed\":2'|there twice",
                "'\"transport\":{\"motion\":{}}'|transport.motion",
                "'\"transport\":[]'|transport"
            })
    void whatIsWrongIsToldWithItsPlace(String members, String expected) {
        String message = refusal(HEAD + "," + members + "}");
        assertTrue(message.contains(expected), message);
        assertFalse(message.contains("offtape.core"), message);
        assertFalse(message.contains("com.fasterxml"), message);
        assertTrue(message.length() < 700, message);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "null",
                "[]",
                "7",
                "{",
                "{\"format\":\"offtape-machine\",\"version\":1} x",
                "{\"format\":\"offtape-programme\",\"version\":1}",
                "{\"format\":\"offtape-machine\",\"version\":2}",
                "{\"format\":\"offtape-machine\"}",
                "{\"format\":\"offtape-machine\",\"version\":1.0}",
                "{}"
            })
    void whatIsNoDescriptionIsRefused(String text) {
        assertFalse(refusal(text).isBlank());
    }

    @Test
    void hostileTextIsRefused() {
        assertFalse(refusal("[".repeat(100_000)).isBlank());
        assertFalse(refusal("{\"note\":".repeat(5000)).isBlank());
        assertFalse(refusal(HEAD + ",\"seed\":" + "9".repeat(5000) + "}").isBlank());
        assertTrue(refusal(HEAD + ",\"" + "x".repeat(5000) + "\\u001b[2J\":1}").length() < 700);
    }

    @Test
    void filesAreReadAndTheirMotionIsFoundBesideThem() throws IOException {
        Path file = folder.resolve("machine.json");
        Files.writeString(file, HEAD + ",\"transport\":{\"motion\":{\"csv\":\"motion.csv\"}}}");
        MachineSpec spec = MachineSpec.fromJson(file);
        assertEquals(folder.resolve("motion.csv").toString(), spec.transport().motion().csv());
        Files.write(file, "ÿþ".getBytes(StandardCharsets.ISO_8859_1));
        assertThrows(UnusableInputException.class, () -> MachineSpec.fromJson(file));
        Path absent = folder.resolve("absent.json");
        UnusableInputException fault =
                assertThrows(UnusableInputException.class, () -> MachineSpec.fromJson(absent));
        assertTrue(fault.getMessage().contains("absent.json"));
    }

    @Test
    void otherModeKeepsTheRest() {
        MachineSpec spec = MachineSpec.fromJson(HEAD + ",\"name\":\"a\"}");
        MachineSpec other = spec.withMode(CaptureMode.LOOPBACK);
        assertEquals(CaptureMode.LOOPBACK, other.mode());
        assertEquals(spec, other.withMode(CaptureMode.REFERENCE_TAPE));
    }

    private static String refusal(String text) {
        return assertThrows(UnusableInputException.class, () -> MachineSpec.fromJson(text))
                .getMessage();
    }
}
