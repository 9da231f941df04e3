package offtape.cli.sound.portaudio;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.sound.DeviceSide;
import offtape.core.text.Sentences;

/** Asks the library what one direction of a device takes. */
final class PortAudioProbe {

    private static final Sentences SAID = Sentences.near(PortAudioProbe.class);

    private static final int[] RATES_HZ = {44_100, 48_000, 88_200, 96_000, 176_400, 192_000};
    private static final int[] FEWER_CHANNELS = {32, 24, 18, 16, 12, 10, 8, 6, 4, 2, 1};
    private static final double LATENCY_S = 0.1;

    /** What a stream carries, whatever the device makes of it. */
    private static final List<Integer> BITS = List.of(PortAudioStream.BITS);

    private final PortAudioApi api;
    private final DeviceTable.Entry entry;
    private final boolean input;
    private int trouble;

    private PortAudioProbe(PortAudioApi api, DeviceTable.Entry entry, boolean input) {
        this.api = api;
        this.entry = entry;
        this.input = input;
    }

    /** What a device plays, or null if it is none for playing. */
    static DeviceSide playback(PortAudioApi api, DeviceTable.Entry entry) {
        int most = entry.device().outputs();
        return most > 0 ? new PortAudioProbe(api, entry, false).side(most) : null;
    }

    /** What a device records, or null if it is none for recording. */
    static DeviceSide capture(PortAudioApi api, DeviceTable.Entry entry) {
        int most = entry.device().inputs();
        return most > 0 ? new PortAudioProbe(api, entry, true).side(most) : null;
    }

    private DeviceSide side(int most) {
        int few = Math.min(2, most);
        List<Integer> rates = new ArrayList<>();
        for (int rate : RATES_HZ) {
            if (opens(rate, few)) {
                rates.add(rate);
            }
        }
        if (rates.isEmpty()) {
            return new DeviceSide(0, List.of(), List.of(), hint());
        }
        return new DeviceSide(channels(most, few, rates.get(0)), rates, BITS, null);
    }

    private int channels(int most, int few, int rateHz) {
        if (opens(rateHz, most)) {
            return most;
        }
        for (int channels : FEWER_CHANNELS) {
            if (channels < most && channels > few && opens(rateHz, channels)) {
                return channels;
            }
        }
        return few;
    }

    private boolean opens(int rateHz, int channels) {
        PortAudioApi.Side side = new PortAudioApi.Side(entry.number(), channels, LATENCY_S);
        int code =
                input
                        ? api.isFormatSupported(side, null, rateHz)
                        : api.isFormatSupported(null, side, rateHz);
        trouble = code == 0 ? trouble : code;
        return code == 0;
    }

    private String hint() {
        return trouble == PortAudioApi.DEVICE_UNAVAILABLE
                ? SAID.say("busy")
                : SAID.say("portaudio-not-open", api.errorText(trouble));
    }
}
