package offtape.cli.sound.portaudio;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayer;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import offtape.core.text.Sentences;

/**
 * Devices by way of the system's PortAudio library: both directions run as one stream, and gaps are
 * reported by the system. The library is looked for when it is first needed; where there is none,
 * this layer has no devices.
 */
public final class PortAudioLayer implements SoundLayer {

    private static final Sentences SAID = Sentences.near(PortAudioLayer.class);

    private static final String NAME = "portaudio";
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    private final Supplier<Optional<PortAudioApi>> library;

    /** With the system's library. */
    public PortAudioLayer() {
        // a reference to the method would load its class, and with it that of native calls, now
        this(() -> NativePortAudio.find());
    }

    PortAudioLayer(Supplier<Optional<PortAudioApi>> library) {
        this.library = library;
    }

    @Override
    public String name() {
        return NAME;
    }

    @Override
    public List<SoundDevice> devices() {
        PortAudioApi api = library.get().orElse(null);
        if (api == null || api.initialize() != 0) {
            return List.of();
        }
        try {
            return new DeviceTable(api)
                    .entries().stream()
                            .map(
                                    e ->
                                            new SoundDevice(
                                                    NAME,
                                                    e.label(),
                                                    "",
                                                    PortAudioProbe.playback(api, e),
                                                    PortAudioProbe.capture(api, e)))
                            .toList();
        } finally {
            api.terminate();
        }
    }

    @Override
    public SoundStream open(StreamRequest request) {
        PortAudioApi api =
                library.get()
                        .orElseThrow(
                                () -> new SoundTroubleException(SAID.say("portaudio-missing")));
        return PortAudioStream.open(api, request, PATIENCE);
    }
}
