package offtape.cli.sound;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.Set;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.SourceDataLine;
import javax.sound.sampled.TargetDataLine;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Java's own sound layer with made-up devices that Java itself finds. */
class JavaSoundLayerTest {

    private static final int RATE = 48_000;
    private static final double BUFFER_S = 0.3;

    /** Opens with all of its channels only, as some systems have it. */
    private final MadeUpDevice desk =
            MadeUpDevice.duplex("Made-up desk [7,0]", Set.of(8), Set.of(24), Set.of(RATE, 96_000));

    private final MadeUpDevice boxA =
            MadeUpDevice.duplex("Made-up box A", Set.of(1, 2), Set.of(16), Set.of(44_100, RATE));

    private final MadeUpDevice boxB =
            MadeUpDevice.duplex("Made-up box B", Set.of(2), Set.of(16, 32), Set.of(RATE));

    private final MadeUpDevice microphone =
            MadeUpDevice.microphone("Made-up microphone", Set.of(1), Set.of(16), Set.of(96_000));

    private final MadeUpDevice controls = MadeUpDevice.controls("Port Made-up box B");

    private final JavaSoundLayer layer = new JavaSoundLayer();

    @BeforeEach
    void plugIn() {
        MadeUpDevices.plugIn(desk, boxA, boxB, microphone, controls);
    }

    @AfterEach
    void unplug() {
        MadeUpDevices.unplugAll();
    }

    private static StreamRequest.End end(String device, String channels) {
        return device == null ? null : new StreamRequest.End(device, ChannelPair.parse(channels));
    }

    private SoundStream open(String output, String input, String channels, int rateHz) {
        return layer.open(
                new StreamRequest(end(output, channels), end(input, channels), rateHz, BUFFER_S));
    }

    private String refusal(String output, String input, String channels, int rateHz) {
        return assertThrows(
                        SoundTroubleException.class, () -> open(output, input, channels, rateHz))
                .getMessage();
    }

    private List<SoundDevice> listed() {
        return layer.devices().stream().filter(d -> d.name().contains("Made-up")).toList();
    }

    private DeviceSide capture(MadeUpDevice device) {
        return listed().stream()
                .filter(d -> d.name().equals(device.info().getName()))
                .findFirst()
                .orElseThrow()
                .capture();
    }

    @Test
    void devicesAreListedWithWhatOpens() {
        assertEquals(
                List.of(
                        "Made-up desk [7,0]",
                        "Made-up box A",
                        "Made-up box B",
                        "Made-up microphone"),
                listed().stream().map(SoundDevice::name).toList());
        SoundDevice first = listed().get(0);
        assertEquals("java", first.layer());
        assertEquals("made up for tests", first.description());
        DeviceSide wide = new DeviceSide(8, List.of(RATE, 96_000), List.of(24), null);
        assertEquals(wide, first.playback());
        assertEquals(wide, first.capture());
        assertEquals(new DeviceSide(2, List.of(44_100, RATE), List.of(16), null), capture(boxA));
        assertEquals(new DeviceSide(2, List.of(RATE), List.of(16, 32), null), capture(boxB));
        assertEquals(new DeviceSide(1, List.of(96_000), List.of(16), null), capture(microphone));
        assertNull(listed().get(3).playback());
        assertTrue(desk.opened.stream().noneMatch(MadeUpLine::isOpen));
    }

    @ParameterizedTest
    @CsvSource({
        "Device or resource busy, busy: another program has it",
        "Permission denied, no permission:",
        "it rains, does not open:",
    })
    void whyItDoesNotOpenIsSaid(String trouble, String hint) {
        boxA.trouble = trouble;
        DeviceSide side = capture(boxA);
        assertFalse(side.opens());
        assertTrue(side.hint().startsWith(hint), side.hint());
    }

    /** Channels 5 and 6 of eight frames of 24 bits lie 12 bytes after the frame's begin. */
    @Test
    void aPairInTheMiddleOfAWideDeviceIsPlayedAndRecorded() {
        try (SoundStream stream = open("Made-up desk [7,0]", "Made-up desk [7,0]", "5,6", RATE)) {
            assertEquals(24, stream.bits());
            assertEquals(2, stream.outputs());
            assertEquals(2, stream.inputs());
            MadeUpLine out = desk.line(SourceDataLine.class);
            assertEquals(24 * 14_400, out.bufferBytes(), "0.3 s");
            stream.play(new double[][] {{0.5, 0}, {0, -0.5}}, 2);
            byte[] expected = new byte[48];
            expected[14] = 0x40;
            expected[24 + 17] = (byte) 0xc0;
            assertArrayEquals(expected, out.played.toByteArray());
            MadeUpLine in = desk.line(TargetDataLine.class);
            in.heard = expected;
            double[][] back = new double[2][2];
            assertEquals(2, stream.record(back, 2));
            assertEquals(0.5, back[0][0]);
            assertEquals(-0.5, back[1][1]);
        }
        assertTrue(desk.opened.stream().noneMatch(MadeUpLine::isOpen));
    }

    @ParameterizedTest
    @CsvSource({
        "'Made-up desk [7,0]', 24",
        "DESK, 24",
        "Made-up box A, 16",
        "box b, 32",
    })
    void theWidestUsefulSamplesOfTheDeviceOfThatNameAreTaken(String name, int bits) {
        try (SoundStream stream = open(name, name, "1,2", RATE)) {
            assertEquals(bits, stream.bits());
        }
    }

    @Test
    void widthsOfSamplesAreTriedInTurn() {
        open(null, "Made-up box A", "1,2", RATE).close();
        assertEquals(
                List.of(24, 32, 16),
                boxA.tried.stream().map(AudioFormat::getSampleSizeInBits).distinct().toList());
    }

    /** Each direction has the width that it takes; that of what comes in is told. */
    @Test
    void differentDevicesMayPlayAndRecord() {
        try (SoundStream stream = open("Made-up desk", "Made-up box B", "2,1", RATE)) {
            assertEquals(32, stream.bits());
            assertNotNull(desk.line(SourceDataLine.class));
        }
    }

    @Test
    void aDeviceWithOneChannelRecordsThatOne() {
        try (SoundStream stream = open(null, "Made-up microphone", "1", 96_000)) {
            assertEquals(1, stream.inputs());
            assertEquals(0, stream.outputs());
            MadeUpLine in = microphone.line(TargetDataLine.class);
            in.heard = new byte[] {0, 0x20};
            double[][] back = new double[1][1];
            stream.record(back, 1);
            assertEquals(0.25, back[0][0]);
        }
    }

    @Test
    void aNameThatFitsSeveralOrNoneIsRefused() {
        assertEquals(
                "\"made-up box\" fits more than one sound device that records: \"Made-up box A\","
                        + " \"Made-up box B\". Give more of the name.",
                refusal(null, "made-up box", "1,2", RATE));
        assertEquals(
                "There is no sound device \"microphone\" that plays. \"offtape devices\" lists them"
                        + " by name.",
                refusal("microphone", null, "1,2", RATE));
    }

    @Test
    void whatDoesNotOpenIsNamed() {
        assertEquals(
                "The input \"Made-up box A\" does not open at 96000 Hz with channels 1,2, be it"
                        + " with 24, 32 or 16 bits. Close other programs that use it, or choose a"
                        + " rate and channels that \"offtape devices\" lists.",
                refusal("Made-up desk", "Made-up box A", "1,2", 96_000));
        assertTrue(
                refusal("Made-up box B", null, "3", RATE)
                        .startsWith(
                                "The output \"Made-up box B\" does not open at 48000 Hz with"
                                        + " channel 3, be it"));
    }

    /** Only where the computer has no devices of its own. */
    @Test
    void withoutAnyDeviceTheUserIsTold() {
        MadeUpDevices.unplugAll();
        assumeTrue(JavaDirection.CAPTURE.devices().isEmpty());
        StreamRequest.End any = new StreamRequest.End(null, ChannelPair.FIRST);
        assertEquals(
                "There is no sound device that records. Connect the interface and switch it on; on"
                        + " a computer without sound hardware a sound server must run. \"offtape"
                        + " devices\" lists what is there.",
                assertThrows(
                                SoundTroubleException.class,
                                () -> layer.open(new StreamRequest(any, any, RATE, BUFFER_S)))
                        .getMessage());
    }

    @Test
    void theInputIsClosedAgainIfTheOutputIsBusy() {
        boxA.trouble = "busy";
        assertTrue(
                refusal("Made-up box A", "Made-up desk", "1,2", RATE)
                        .startsWith("The output \"Made-up box A\" does not open"));
        assertEquals(1, desk.opened.size());
        assertFalse(desk.opened.get(0).isOpen());
    }

    /** Java takes its own choice from these properties (javax.sound.sampled.AudioSystem). */
    @Test
    void theSystemsOwnChoiceIsTakenIfNoneIsNamed() {
        String property = TargetDataLine.class.getName();
        System.setProperty(property, "#Made-up desk [7,0]");
        try {
            StreamRequest.End any = new StreamRequest.End(null, ChannelPair.FIRST);
            layer.open(new StreamRequest(null, any, RATE, BUFFER_S)).close();
            assertEquals(1, desk.opened.size());
        } finally {
            System.clearProperty(property);
        }
    }
}
