package offtape.cli.sound.portaudio;

import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import offtape.core.text.Sentences;

/** Opens a stream as it was requested: the devices by their names, the channels up to the last. */
final class Opening {

    private static final Sentences SAID = Sentences.near(Opening.class);

    private final PortAudioApi api;
    private final StreamRequest request;

    Opening(PortAudioApi api, StreamRequest request) {
        this.api = api;
        this.request = request;
    }

    /** How many channels of the input are opened. */
    static int inputWidth(StreamRequest.End end) {
        return end.channels().width();
    }

    /**
     * How many channels of the output are opened: whole pairs, since the library doubles a last odd
     * channel on its neighbour.
     */
    static int outputWidth(StreamRequest.End end) {
        return (end.channels().width() + 1) / 2 * 2;
    }

    /**
     * Opens it; the library is initialised.
     *
     * @return the stream
     * @throws SoundTroubleException if a device is not there or does not open so
     */
    long open() {
        DeviceTable table = new DeviceTable(api);
        StreamRequest.End in = request.input();
        StreamRequest.End out = request.output();
        DeviceTable.Entry input = in == null ? null : table.input(in.device(), device(out));
        DeviceTable.Entry output = out == null ? null : table.output(out.device(), device(in));
        if (input != null && output != null && input.hostApi() != output.hostApi()) {
            throw unlike(output.label(), input.label());
        }
        PortAudioApi.Opened opened =
                api.open(
                        in == null ? null : side(input, inputWidth(in)),
                        out == null ? null : side(output, outputWidth(out)),
                        request.sampleRateHz());
        if (opened.code() == PortAudioApi.BAD_DEVICE_COMBINATION) {
            throw unlike(output.label(), input.label());
        }
        if (opened.code() != 0) {
            throw refused(opened.code());
        }
        return opened.stream();
    }

    private static String device(StreamRequest.End end) {
        return end == null ? null : end.device();
    }

    private PortAudioApi.Side side(DeviceTable.Entry entry, int width) {
        return new PortAudioApi.Side(entry.number(), width, request.bufferSeconds());
    }

    private static SoundTroubleException unlike(String output, String input) {
        return new SoundTroubleException(SAID.say("portaudio-pair", output, input));
    }

    private SoundTroubleException refused(int code) {
        int rate = request.sampleRateHz();
        String why = api.errorText(code);
        if (request.output() == null) {
            return new SoundTroubleException(
                    SAID.say("portaudio-open-in", rate, request.input().channels(), why));
        }
        if (request.input() == null) {
            return new SoundTroubleException(
                    SAID.say("portaudio-open-out", rate, request.output().channels(), why));
        }
        return new SoundTroubleException(
                SAID.say(
                        "portaudio-open-both",
                        rate,
                        request.output().channels(),
                        request.input().channels(),
                        why));
    }
}
