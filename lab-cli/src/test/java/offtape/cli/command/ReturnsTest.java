package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Returns that can be measured, though something is odd about them. */
class ReturnsTest {

    @TempDir private static Path folder;

    private static Lab lab;
    private static byte[] good;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        good = Wav.PCM_24.of(Mini.RATE, Mini.sound());
    }

    private static double[][] sound(DoubleUnaryOperator left, DoubleUnaryOperator right) {
        double[][] sound = Mini.sound();
        Arrays.setAll(sound[0], i -> left.applyAsDouble(sound[0][i]));
        Arrays.setAll(sound[1], i -> right.applyAsDouble(sound[1][i]));
        return sound;
    }

    /** Severity and code of every remark but that on the self-check. */
    private static Set<String> remarks(JsonNode results) {
        Set<String> remarks = new HashSet<>();
        for (JsonNode note : results.get("health")) {
            remarks.add(note.get("severity").asText() + " " + note.get("code").asText());
        }
        remarks.remove("note self-check");
        return remarks;
    }

    private static double value(JsonNode results, String place) {
        JsonNode value = results.at(place + "/value");
        assertTrue(value.isNumber(), place + " " + results.at(place));
        return value.asDouble();
    }

    @Test
    void invertedAsAWhole() {
        JsonNode results = lab.results(lab.wav("inverted.wav", sound(x -> -x, x -> -x)));
        assertEquals("inverted", results.at("/timing/polarity").asText());
        assertEquals(Set.of(), remarks(results));
    }

    @Test
    void oneChannelInverted() {
        JsonNode results = lab.results(lab.wav("opposite.wav", sound(x -> x, x -> -x)));
        assertEquals(Set.of("warning opposite-channels"), remarks(results));
        assertTrue(results.get("health").get(0).get("message").asText().contains("right channel"));
    }

    @Test
    void clipped() {
        // +7 dB: the ladder's top of −4 dBFS would be at +3
        DoubleUnaryOperator hot = x -> Math.max(-1, Math.min(1, 2.24 * x));
        JsonNode results = lab.results(lab.wav("clipped.wav", sound(hot, x -> x)));
        assertEquals(Set.of("warning clipping"), remarks(results));
        String message = results.get("health").get(0).get("message").asText();
        // the step of +12 dB (reference −11 dBFS) is the first that does not fit; it begins 8.7 s
        // + 6 · 0.4 s into the programme
        assertTrue(message.startsWith("The left channel is clipped in "), message);
        assertTrue(message.contains("first at 11.1"), message);
    }

    @Test
    void faint() {
        JsonNode results = lab.results(lab.wav("faint.wav", sound(x -> x / 32, x -> x / 32)));
        assertEquals(Set.of("warning too-quiet"), remarks(results));
        assertEquals(0, value(results, "/speed/deviation"), 0.0005);
    }

    @Test
    void oneChannelDead() {
        JsonNode results = lab.results(lab.wav("dead.wav", sound(x -> x, x -> 0)));
        assertTrue(remarks(results).contains("blocking dead-channel"), remarks(results).toString());
        assertTrue(results.at("/channels/balance/value").isNull());
        assertEquals(0, value(results, "/speed/deviation"), 0.0005);
    }

    @Test
    void fourChannels() {
        double[][] two = Mini.sound();
        double[] other = Lab.noise(9, 0.1, 22.3);
        JsonNode results = lab.results(lab.wav("four.wav", two[0], two[1], other, other));
        assertEquals(Set.of("note more-channels"), remarks(results));
        assertEquals(
                "The recording has 4 channels; the first two were measured. Choose others with"
                        + " --channels, such as --channels 3,4.",
                results.at("/health/0/message").asText());
        assertEquals(0, value(results, "/channels/balance"), 0.001);
    }

    @Test
    void cutInTheMiddle() {
        Path cut = lab.file("cut.wav", Arrays.copyOf(good, good.length / 2));
        JsonNode results = lab.results(cut);
        // what is left of the programme has no part on one channel alone
        assertEquals(
                Set.of("warning incomplete", "warning file", "note identical-channels"),
                remarks(results));
        assertTrue(results.at("/speed/weightedPeak/value").isNull());
        assertEquals(2, results.get("response").size());
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, 6 * 48_000 * 20})
    void headerLiesAboutTheLength(int statedBytes) {
        byte[] lies = Lab.patched(good, Wav.DATA_SIZE_OFFSET, statedBytes);
        JsonNode results = lab.results(lab.file("lies" + statedBytes + ".wav", lies));
        assertTrue(remarks(results).contains("warning file"), remarks(results).toString());
        assertEquals(0, value(results, "/timing/delay"), 0.005);
    }

    @Test
    void amongOtherMaterial() {
        double before = 7.25;
        double[][] tape = new double[2][];
        for (int c = 0; c < 2; c++) {
            double[] ahead = bursts(11 + c, before);
            double[] behind = bursts(21 + c, 6);
            double[] programme = Mini.sound()[c];
            tape[c] = Arrays.copyOf(ahead, ahead.length + programme.length + behind.length);
            System.arraycopy(programme, 0, tape[c], ahead.length, programme.length);
            System.arraycopy(behind, 0, tape[c], ahead.length + programme.length, behind.length);
        }
        JsonNode results = lab.results(lab.wav("among.wav", tape));
        assertEquals(1000 * before, value(results, "/timing/delay"), 0.005);
        assertEquals(0, value(results, "/speed/deviation"), 0.0005);
        assertEquals(Set.of(), remarks(results));
    }

    /** Noise whose level jumps four times a second, as music's does. */
    private static double[] bursts(long seed, double seconds) {
        double[] x = Lab.noise(seed, 0.1, seconds);
        double[] gain = Lab.noise(seed + 100, 0.5, seconds);
        Arrays.setAll(x, i -> x[i] * gain[i / 12_000]);
        return x;
    }

    /** A header that names another rate: 44.1 for 48 kHz plays at 0.91875 of the speed. */
    @ParameterizedTest
    @CsvSource({
        "44100, -8.125, warning far-off-speed, is taken for one of 48 kHz",
        "57600, 20, warning mains-frequency, made for 50 Hz mains",
        "96000, 100, blocking wrong-speed, was made for 19.05 cm/s and ran at 38.1 cm/s",
    })
    void farOffItsSpeed(int rate, double percent, String remark, String words) {
        byte[] relabelled = Lab.patched(good, Wav.RATE_OFFSET, rate);
        JsonNode results = lab.results(lab.file("rate" + rate + ".wav", relabelled));
        assertEquals(percent, value(results, "/speed/deviation"), 0.0005);
        assertEquals(0, value(results, "/timing/delay"), 0.005);
        assertTrue(remarks(results).contains(remark), results.get("health").toString());
        assertTrue(
                results.get("health").toString().contains(words), results.get("health").toString());
    }

    /** A false start of 9 s, a pause, and the whole programme 12 s into the recording. */
    @Test
    void aFalseStartIsLeftOut() {
        double[][] whole = Mini.sound();
        double[][] both = new double[2][12 * Mini.RATE + whole[0].length];
        for (int c = 0; c < 2; c++) {
            System.arraycopy(whole[c], 0, both[c], 0, 9 * Mini.RATE);
            System.arraycopy(whole[c], 0, both[c], 12 * Mini.RATE, whole[c].length);
        }
        JsonNode results = lab.results(lab.wav("false-start.wav", both));
        assertEquals(12_000, value(results, "/timing/delay"), 0.005);
        assertEquals(Set.of("note several-takes"), remarks(results));
        String message = results.at("/health/0/message").asText();
        assertTrue(message.contains("2 times: from 0.0 s to "), message);
        assertTrue(message.contains("from 12.0 s whole"), message);
    }

    /** What a bare tone reads: 3150 Hz heard as 3181.5 is 1 % fast, re 3000 Hz 6.05 %. */
    @Test
    void aBareTone() {
        Path tone = lab.wav("bare.wav", Lab.tone(3181.5, 0.1, 8));
        assertTrue(
                Tool.run("speed", tone).out().contains("Speed deviation         +1.000 % ± 0.005"));
        Tool.Outcome asThree = Tool.run("speed", tone, "--frequency", "3000");
        assertTrue(asThree.out().contains("Speed deviation         +6.050 % ±"), asThree.out());
    }

    @Test
    void theToneThatIsMeantAmongOthers() {
        double[] long1k = Lab.tone(1000, 0.1, 10);
        double[] tape = Arrays.copyOf(long1k, 17 * Mini.RATE);
        double[] short3k = Lab.tone(3150, 0.1, 6);
        System.arraycopy(short3k, 0, tape, 11 * Mini.RATE, short3k.length);
        Path file = lab.wav("two-tones.wav", tape);
        Tool.Outcome flutter = Tool.run("speed", file);
        assertTrue(flutter.out().contains("3150 Hz nominal"), flutter.out());
        assertTrue(flutter.out().contains("Other tones in the recording: 1000 Hz."), flutter.out());
        Tool.Outcome meant = Tool.run("speed", file, "--frequency", "1000");
        assertTrue(meant.out().contains("1000 Hz nominal"), meant.out());
        assertTrue(meant.out().contains("Speed deviation         0.000 % ± 0.005"), meant.out());
        Tool.Outcome early = Tool.run("speed", file, "--to", "11");
        assertTrue(early.out().contains("1000 Hz nominal, 9."), early.out());
    }
}
