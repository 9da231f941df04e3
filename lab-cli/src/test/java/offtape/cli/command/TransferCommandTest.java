package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import offtape.cli.sound.LoopLayer;
import offtape.cli.sound.LoopMachine;
import offtape.reference.Schemas;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Stems sent through made-up machines. */
@Timeout(60)
class TransferCommandTest {

    private static final int LATE = 4321;

    @TempDir private Path folder;

    private Stems stems;

    @BeforeEach
    void aDesk() {
        stems = new Stems(folder);
    }

    private static LoopLayer wire() {
        return new LoopLayer(LoopMachine.wire(LATE));
    }

    private static void assertDone(Tool.Outcome outcome) {
        assertEquals(0, outcome.code(), outcome.err());
        assertEquals("", outcome.out());
    }

    /** Kinds, rates and lengths as stems have them: all come back to the bit over a wire. */
    @Test
    void anExactPathGivesEveryStemBackToTheBit() throws IOException {
        double[] left = Stems.noise(9000, 1);
        double[] right = Stems.noise(9001, 0.5);
        double[] one = {0.25};
        Path stereo = stems.stem("in/stereo.wav", left, Arrays.copyOf(right, 9000));
        Path mono = stems.write("in/mono.flac", Flac.of(44_100, right));
        Path single = stems.stem("in/single.wav", one);
        Path empty = stems.stem("in/empty.wav", new double[0]);
        LoopLayer layer = wire();
        assertDone(stems.transfer(layer, stereo, mono, single, empty));
        assertArrayEquals(left, stems.back("stereo.wav")[0]);
        assertArrayEquals(Arrays.copyOf(right, 9000), stems.back("stereo.wav")[1]);
        assertEquals(1, stems.back("mono.wav").length);
        assertArrayEquals(right, stems.back("mono.wav")[0]);
        assertArrayEquals(one, stems.back("single.wav")[0]);
        assertEquals(0, stems.back("empty.wav")[0].length);
        assertArrayEquals(layer.stream(2).played(0), layer.stream(2).played(1), "mono to both");
        JsonNode e = stems.entry("mono.wav");
        // frames from the start of recording to the first played one, less the half second before
        // the marks that is played too
        assertEquals(1000.0 * LATE / 44_100, e.at("/path/delayMs").asDouble(), 1e-9);
        assertEquals(0, e.at("/path/driftPpm").asDouble());
        assertEquals(0, e.at("/path/channels/0/gainDb").asDouble());
        assertEquals("normal", e.at("/path/channels/0/polarity").asText());
        assertEquals("left", e.at("/settings/takenFrom").asText());
        double peak = Arrays.stream(right).map(Math::abs).max().orElseThrow();
        assertEquals(20 * Math.log10(peak), e.at("/levels/peakOutDbfs").asDouble(), 1e-9);
        assertEquals(e.at("/levels/rmsInDbfs"), e.at("/levels/rmsOutDbfs"));
        JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
        String text = Files.readString(stems.out().resolve("transfer.json"));
        assertEquals(
                Set.of(), factory.getSchema(Schemas.transfer()).validate(text, InputFormat.JSON));
    }

    /**
     * Late by a part of a frame, 100 ppm fast, right inverted and 1 dB down. What remains: the
     * project's interpolation is good to −100 dB of a tone up to 0.45 of the rate, this machine's
     * own (Hann squared over 128 frames) is better still there; half a step of 24 bits at each end.
     */
    @Test
    void timePolarityAndBalanceAreTakenBack() {
        double[] left = Stems.tone(997, 0.4, 20_000);
        double[] right = Stems.tone(3001, 0.4, 20_000);
        Path stem = stems.stem("in/stem.wav", left, right);
        double down = -Math.pow(10, -1 / 20.0);
        LoopLayer layer =
                new LoopLayer(LoopMachine.wire(LATE).withTime(4321.37, 1e-4).withGains(0.9, down));
        assertDone(stems.transfer(layer, stem, "--float"));
        double[][] back = stems.back("stem.wav");
        double worst = 0;
        for (int i = 0; i < left.length; i++) {
            worst = Math.max(worst, Math.abs(back[0][i] - left[i]));
            worst = Math.max(worst, Math.abs(back[1][i] - right[i]));
        }
        System.out.printf("transfer, late, fast and uneven: %.2e of full scale is left%n", worst);
        assertTrue(worst < 0.4 * 1e-5 + 2e-7, "left: " + worst);
        JsonNode e = stems.entry("stem.wav");
        assertEquals(100, e.at("/path/driftPpm").asDouble(), 0.01);
        assertEquals("inverted", e.at("/path/channels/1/polarity").asText());
        assertEquals(-1, e.at("/path/channels/1/gainDb").asDouble(), 1e-3);
        assertEquals("float-32", e.at("/levels/encoding").asText());
    }

    /** A raise by 12 dB that is taken back leaves the samples as they were. */
    @Test
    void theDriveIsTakenBack() {
        double[] x = Stems.noise(8000, 0.2);
        LoopLayer layer = wire();
        assertDone(stems.transfer(layer, stems.stem("in/a.wav", x), "--drive", "12"));
        assertArrayEquals(x, stems.back("a.wav")[0]);
        double sent = Arrays.stream(layer.stream(1).played(0)).max().orElseThrow();
        double most = Arrays.stream(x).max().orElseThrow();
        assertEquals(most * Math.pow(10, 12 / 20.0), sent, 1e-6);
    }

    /**
     * The machine's right channel bends more, a = 0.6, and reaches 1 % first: ¼aA² = 0.01·(1 −
     * ¾aA²) gives aA² = 0.01/0.2575, so A = 0.25441, −11.889 dBFS. The tone that comes back has
     * just that.
     */
    @Test
    void aLevelByDistortionIsThatOfTheChannelThatReachesItFirst() {
        stems.session("session", -18.0, 0.5, 0.6);
        double[] tone = Stems.tone(500, 0.5, 16_000);
        LoopLayer layer = new LoopLayer(LoopMachine.wire(LATE).withCurve(x -> x - 0.6 * x * x * x));
        assertDone(stems.transfer(layer, stems.stem("in/tone.wav", tone), "--k3", "1%"));
        double expected = 20 * Math.log10(Math.sqrt(0.01 / 0.2575 / 0.6)) - 20 * Math.log10(0.5);
        assertEquals(expected, stems.entry("tone.wav").at("/settings/driveDb").asDouble(), 0.005);
        double[] back = stems.back("tone.wav")[0];
        assertEquals(0.01, part(back, 1500) / part(back, 500), 1e-4);
    }

    /** Amplitude of a tone over whole periods in the steady middle. */
    private static double part(double[] x, double hz) {
        double re = 0;
        double im = 0;
        for (int i = 4000; i < 12_000; i++) {
            re += x[i] * Math.cos(2 * Math.PI * hz * i / Stems.RATE);
            im += x[i] * Math.sin(2 * Math.PI * hz * i / Stems.RATE);
        }
        return Math.hypot(re, im) / 4000;
    }

    @Test
    void anOldSessionNeedsItsReferenceLevel() {
        stems.session("session", null, 0.5);
        Path tone = stems.stem("in/tone.wav", Stems.tone(500, 0.5, 8000));
        Tool.Outcome refused = stems.transfer(wire(), tone, "--k3", "1");
        assertEquals(3, refused.code());
        assertTrue(refused.err().contains("--reference-level"), refused.err());
        assertFalse(Files.exists(stems.out()));
        assertDone(stems.transfer(wire(), tone, "--k3", "1", "--reference-level", "-18"));
        Tool.Outcome outside =
                stems.transfer(wire(), tone, "--k3", "25", "--reference-level", "-18");
        assertEquals(3, outside.code());
        assertTrue(outside.err().contains("which does not hold 25.0 %"), outside.err());
    }

    @Test
    void whatIsDoneIsSkippedUnlessSomethingChanged() throws IOException {
        Path a = stems.stem("in/a.wav", Stems.noise(2000, 0.3));
        Path b = stems.stem("in/b.wav", Stems.noise(2001, 0.3));
        assertDone(stems.transfer(wire(), a));
        byte[] log = Files.readAllBytes(stems.out().resolve("transfer.json"));
        LoopLayer again = wire();
        assertDone(stems.transfer(again, a));
        assertEquals(0, again.count());
        assertArrayEquals(log, Files.readAllBytes(stems.out().resolve("transfer.json")));
        assertDone(stems.transfer(again, a, b));
        assertEquals(1, again.count());
        assertDone(stems.transfer(again, a, "--drive", "3"));
        assertEquals(2, again.count());
        assertDone(stems.transfer(again, a, "--drive", "3", "--again"));
        assertEquals(3, again.count());
        stems.stem("in/a.wav", Stems.noise(2002, 0.3));
        assertDone(stems.transfer(again, a, "--drive", "3"));
        assertEquals(4, again.count());
        Files.delete(stems.out().resolve("b.wav"));
        assertDone(stems.transfer(again, b));
        assertEquals(5, again.count());
        assertEquals(2, stems.log().get("stems").size());
        assertArrayEquals(Stems.noise(2001, 0.3), stems.back("b.wav")[0]);
    }

    @Test
    void whatDoesNotComeBackIsToldAndTheRestGoesOn() {
        Path dead = stems.stem("in/dead.wav", Stems.noise(2000, 0.3));
        Path cut = stems.stem("in/cut.wav", Stems.noise(8000, 0.3));
        Path good = stems.stem("in/good.wav", Stems.noise(2002, 0.3));
        LoopLayer layer =
                wire().with(
                                (n, stream) -> {
                                    stream.silentAfter =
                                            n == 1 ? 0 : n == 2 ? 30_000 : Long.MAX_VALUE;
                                });
        Tool.Outcome outcome = stems.transfer(layer, dead, cut, good);
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("dead.wav (silent), cut.wav (failed)"), outcome.err());
        assertEquals("silent", stems.entry("dead.wav").get("outcome").asText());
        assertEquals("failed", stems.entry("cut.wav").get("outcome").asText());
        assertTrue(
                stems.entry("cut.wav").get("message").asText().contains("mark behind it"),
                outcome.err());
        assertTrue(Files.exists(stems.out().resolve("returns/cut.wav")));
        assertFalse(Files.exists(stems.out().resolve("cut.wav")));
        assertArrayEquals(Stems.noise(2002, 0.3), stems.back("good.wav")[0]);
        LoopLayer healed = wire();
        assertDone(stems.transfer(healed, dead, cut, good));
        assertEquals(2, healed.count());
    }

    /** A path 6 dB hot drives a peak of 0.8 to 1.6, and the input to full scale. */
    @Test
    void clippingIsTold() {
        Path loud = stems.stem("in/loud.wav", Stems.tone(500, 0.8, 4000));
        LoopLayer layer = new LoopLayer(LoopMachine.wire(LATE).withGains(2, 2));
        assertEquals(3, stems.transfer(layer, loud).code());
        assertEquals("clipped", stems.entry("loud.wav").get("outcome").asText());
        assertTrue(Files.exists(stems.out().resolve("loud.wav")));
        assertDone(stems.transfer(wire(), loud));
    }

    /** Full scale that was sent over a wire is no clipping. */
    @Test
    void fullScaleOverAnExactPathIsNoClipping() {
        double[] x = {-1, 0.5, 1 - 1.0 / 8_388_608};
        assertDone(stems.transfer(wire(), stems.stem("in/full.wav", x)));
        assertArrayEquals(x, stems.back("full.wav")[0]);
    }

    /** 0.5 raised by 12 dB would be 1.99; −6.02 + 12 − 0 dB is 5.98 dB too much. */
    @Test
    void whatWouldBeTooLoudIsNotSent() {
        Path loud = stems.stem("in/loud.wav", Stems.tone(500, 0.5, 4000));
        Path quiet = stems.stem("in/quiet.wav", Stems.tone(500, 0.05, 4000));
        LoopLayer layer = wire();
        Tool.Outcome outcome = stems.transfer(layer, loud, quiet, "--drive", "12");
        assertEquals(3, outcome.code());
        assertEquals(1, layer.count());
        assertTrue(outcome.err().contains("A drive of 6.0 dB would do"), outcome.err());
        outcome = stems.transfer(layer, quiet, "--max-level", "-30", "--again");
        assertEquals(3, outcome.code());
        assertEquals(1, layer.count());
        // −26.02 dBFS against −30
        assertTrue(outcome.err().contains("A drive of -4.0 dB would do"), outcome.err());
        assertDone(stems.transfer(layer, quiet, "--max-level", "-30", "--drive", "-4"));
        for (double v : layer.stream(2).played(0)) {
            assertTrue(Math.abs(v) <= Math.pow(10, -30 / 20.0) * 1.0012);
        }
    }

    /** h = {1, ½}: each sample half of the one before it too, by hand; in steps of 24 bits. */
    @Test
    void preEmphasisStandsBeforeTheMachine() {
        double[] x = Stems.noise(3000, 0.3);
        Path stem = stems.stem("in/stem.wav", x);
        Path filter = stems.stem("filter.wav", new double[] {0.999_999_9, 0.5});
        assertDone(stems.transfer(wire(), stem, "--pre-emphasis", filter));
        double[] back = stems.back("stem.wav")[0];
        double first = Math.rint(0.999_999_9 * 8_388_608) / 8_388_608;
        for (int i = 0; i < x.length; i++) {
            assertEquals(first * x[i] + (i > 0 ? x[i - 1] / 2 : 0), back[i], 1.0 / 8_388_608);
        }
        Path other = stems.write("other.wav", Wav.PCM_24.of(48_000, new double[] {0.5}));
        Tool.Outcome refused = stems.transfer(wire(), stem, "--pre-emphasis", other);
        assertEquals(3, refused.code());
        assertTrue(refused.err().contains("made for 48000 Hz"), refused.err());
    }

    @Test
    void aDisturbedStemIsSentOnceMore() {
        Path a = stems.stem("in/a.wav", Stems.noise(8000, 0.3));
        LoopLayer once = wire().with((n, s) -> s.underrunAfter = n == 1 ? 20_000 : Long.MAX_VALUE);
        Tool.Outcome outcome = stems.transfer(once, a);
        assertDone(outcome);
        assertEquals(2, once.count());
        assertTrue(outcome.err().contains("is sent once more"), outcome.err());
        LoopLayer unseen =
                wire().with(
                                (n, s) -> {
                                    s.lostAfterPlaying = n == 1 ? 26_000 : Long.MAX_VALUE;
                                    s.lostFrames = 1600;
                                });
        assertDone(stems.transfer(unseen, a, "--again"));
        assertEquals(2, unseen.count());
        LoopLayer always = wire().with((n, s) -> s.underrunAfter = 20_000);
        assertEquals(3, stems.transfer(always, a, "--again").code());
        assertEquals(2, always.count());
        assertEquals("failed", stems.entry("a.wav").get("outcome").asText());
    }

    @Test
    void aLostDeviceKeepsWhatIsDone() {
        Path a = stems.stem("in/a.wav", Stems.noise(2000, 0.3));
        Path b = stems.stem("in/b.wav", Stems.noise(2001, 0.3));
        LoopLayer layer = wire().with((n, s) -> s.goneAfter = n == 2 ? 20_000 : Long.MAX_VALUE);
        Tool.Outcome outcome = stems.transfer(layer, a, b);
        assertEquals(4, outcome.code());
        assertTrue(outcome.err().contains("The input is gone."), outcome.err());
        assertArrayEquals(Stems.noise(2000, 0.3), stems.back("a.wav")[0]);
        assertEquals(1, stems.log().get("stems").size());
        assertFalse(Files.exists(stems.out().resolve("b.wav")));
        LoopLayer rest = wire();
        assertDone(stems.transfer(rest, a, b));
        assertEquals(1, rest.count());
    }

    @Test
    void namesAndPlacesAreLookedAtBeforeAnythingIsPlayed() throws IOException {
        Path a = stems.stem("in/a.wav", Stems.noise(2000, 0.3));
        Path same = stems.stem("other/A.aif", Stems.noise(2000, 0.3));
        LoopLayer layer = wire();
        Tool.Outcome twice = stems.transfer(layer, a, same);
        assertEquals(2, twice.code());
        assertTrue(twice.err().contains("would both come back as A.wav"), twice.err());
        Tool.Outcome own = stems.transferTo(a.getParent(), layer, a, "--force");
        assertEquals(2, own.code());
        assertTrue(own.err().contains("replaced by its own return"), own.err());
        assertEquals(2, stems.transferFor("61", stems.out(), layer, a).code());
        Tool.Outcome missing = stems.transfer(layer, a, stems.path("in/none.wav"));
        assertEquals(3, missing.code());
        Path foreign = stems.stem("out/a.wav", Stems.noise(20, 0.1));
        byte[] before = Files.readAllBytes(foreign);
        assertEquals(2, stems.transfer(layer, a).code());
        assertArrayEquals(before, Files.readAllBytes(foreign));
        assertEquals(0, layer.count());
        assertDone(stems.transfer(layer, a, "--force"));
    }

    @Test
    void aMonoStemIsTakenFromTheOtherChannelIfAsked() {
        double[] x = Stems.noise(3000, 0.3);
        Path a = stems.stem("in/a.wav", x);
        LoopLayer layer = new LoopLayer(LoopMachine.wire(LATE).withGains(0, 1));
        assertEquals(3, stems.transfer(layer, a).code());
        assertDone(stems.transfer(layer, a, "--mono-from", "right"));
        assertArrayEquals(x, stems.back("a.wav")[0]);
        assertEquals("right", stems.entry("a.wav").at("/settings/takenFrom").asText());
    }

    @Test
    void aStereoStemNeedsTwoChannels() {
        double[] x = Stems.noise(3000, 0.3);
        Path pair = stems.stem("in/pair.wav", x, x);
        Path mono = stems.stem("in/mono.wav", x);
        LoopLayer layer = wire();
        Tool.Outcome outcome =
                stems.transfer(
                        layer, pair, mono, "--output-channels", "3", "--input-channels", "4");
        assertEquals(3, outcome.code());
        assertTrue(outcome.err().contains("one channel only was named"), outcome.err());
        assertArrayEquals(x, stems.back("mono.wav")[0]);
    }

    /** Peaks that a machine makes higher do not fit 24 bits: 0.9 returns as 1.035 of full scale. */
    @Test
    void whatTwentyFourBitsDoNotHoldIsWrittenAsFloat() {
        Path a = stems.stem("in/a.wav", Stems.tone(500, 0.9, 4000));
        LoopLayer layer =
                new LoopLayer(LoopMachine.wire(LATE).withCurve(x -> 0.5 * (x + 0.5 * x * x * x)));
        assertDone(stems.transfer(layer, a));
        assertEquals("float-32", stems.entry("a.wav").at("/levels/encoding").asText());
        double peak = Arrays.stream(stems.back("a.wav")[0]).max().orElseThrow();
        // 0.9 + 0.5 · 0.9³, less what the curve does to the marks
        assertEquals(1.2645, peak, 0.005);
    }
}
