package offtape.cli.sound.portaudio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.List;
import java.util.Optional;
import offtape.cli.sound.ChannelPair;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Devices by their names, and what keeps a stream from opening. */
@Timeout(60)
class PortAudioLayerTest {

    private final FakePortAudio library = new FakePortAudio();
    private final PortAudioLayer layer = new PortAudioLayer(() -> Optional.of(library));

    private static StreamRequest request(String output, String input) {
        return new StreamRequest(
                new StreamRequest.End(output, ChannelPair.FIRST),
                new StreamRequest.End(input, new ChannelPair(List.of(1))),
                48_000,
                0.3);
    }

    private void opens(String output, String input) {
        try (SoundStream stream = layer.open(request(output, input))) {
            assertEquals(2, stream.outputs());
        }
    }

    private String refusal(String output, String input) {
        String message =
                assertThrows(SoundTroubleException.class, () -> layer.open(request(output, input)))
                        .getMessage();
        assertEquals('.', message.charAt(message.length() - 1));
        return message;
    }

    @Test
    void devicesAreListedWithTheirHostInterface() {
        library.opensChannels = 4;
        List<SoundDevice> devices = layer.devices();
        assertEquals("portaudio", layer.name());
        // the library cannot read and write with what is reached by "Old", DirectSound
        assertEquals(
                List.of("ALSA: Interface", "ALSA: Interface Two"),
                devices.stream().map(SoundDevice::name).toList());
        SoundDevice first = devices.get(0);
        assertEquals(4, first.playback().channels());
        assertEquals(List.of(44_100, 48_000, 88_200, 96_000), first.capture().sampleRatesHz());
        assertNull(devices.get(1).playback());
        assertEquals(1, devices.get(1).capture().channels());
        assertEquals(List.of("initialize", "terminate"), library.calls);
    }

    @Test
    void whatDoesNotOpenIsHintedAt() {
        library.supporting = PortAudioApi.DEVICE_UNAVAILABLE;
        assertTrue(layer.devices().get(0).playback().hint().startsWith("busy"));
        library.supporting = -9999;
        assertTrue(layer.devices().get(0).capture().hint().contains("fault -9999"));
    }

    @Test
    void aComputerWithoutTheLibraryHasNoSuchDevices() {
        PortAudioLayer none = new PortAudioLayer(Optional::empty);
        assertEquals(List.of(), none.devices());
        String message =
                assertThrows(SoundTroubleException.class, () -> none.open(request(null, null)))
                        .getMessage();
        assertTrue(message.contains("libportaudio2"), message);
    }

    @Test
    void aLibraryThatDoesNotStartHasNoDevicesAndSaysWhy() {
        library.initializing = -9999;
        assertEquals(List.of(), layer.devices());
        assertTrue(refusal(null, null).contains("fault -9999"));
        assertEquals(List.of("initialize", "initialize"), library.calls);
    }

    @Test
    void aDeviceIsChosenByLabelNameOrPart() {
        opens(null, null);
        opens("ALSA: Interface", "ALSA: Interface Two");
        opens("Interface", "two");
        opens("alsa: inter", null);
        opens("alsa: interface", "face tw");
    }

    @Test
    void namesThatFitNoneOrSeveralAreRefused() {
        assertTrue(refusal("Elsewhere", null).contains("\"Elsewhere\""));
        assertTrue(refusal(null, "inter").contains("\"ALSA: Interface Two\""));
        // it plays nothing
        assertTrue(refusal("Interface Two", null).contains("offtape devices"));
    }

    @Test
    void aHostInterfaceWithoutAUsualDeviceAsksForAName() {
        library.hosts.set(0, new PortAudioApi.HostApi(8, "ALSA", -1, 0));
        assertTrue(refusal(null, null).contains("--input"));
        opens(null, "two");
    }

    @Test
    void devicesOfUnlikeHostInterfacesAreRefused() {
        library.hosts.set(1, new PortAudioApi.HostApi(13, "WASAPI", 2, 2));
        String message = refusal("WASAPI: Interface", "ALSA: Interface");
        assertTrue(message.contains("--layer java"), message);
        library.opening = PortAudioApi.BAD_DEVICE_COMBINATION;
        assertTrue(refusal(null, "two").contains("cannot be one"));
    }

    @Test
    void aFormatThatDoesNotOpenIsNamed() {
        library.opening = -9997;
        String message = refusal(null, null);
        assertTrue(message.contains("48000 Hz with channels 1,2 out and 1 in: fault -9997"));
        assertEquals("terminate", library.calls.get(library.calls.size() - 1));
    }

    /** The library's own words for its codes, from its documentation. */
    @Test
    void theSystemsLibraryAnswers() {
        Optional<PortAudioApi> system = NativePortAudio.find();
        assumeTrue(system.isPresent(), "this system has no PortAudio");
        PortAudioApi api = system.get();
        assertEquals("Invalid sample rate", api.errorText(-9997));
        assertEquals(0, api.initialize());
        for (DeviceTable.Entry entry : new DeviceTable(api).entries()) {
            assertTrue(entry.device().inputs() >= 0 && entry.device().inputs() < 10_000);
            assertTrue(entry.device().sampleRateHz() > 0);
        }
        api.terminate();
    }
}
