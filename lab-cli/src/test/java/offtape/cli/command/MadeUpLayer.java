package offtape.cli.command;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import offtape.cli.capture.LoopStream;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayer;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;

/** A way to devices that are not there: what is played comes back. */
final class MadeUpLayer implements SoundLayer {

    /** How much later it comes back, frames. */
    static final int DELAY = 1234;

    private final String name;
    private final List<SoundDevice> devices;

    /** What was asked for. */
    final List<StreamRequest> requests = new ArrayList<>();

    /** Why nothing opens, or null. */
    String trouble;

    /** Puts faults into a stream that is opened. */
    Consumer<LoopStream> faults = stream -> {};

    MadeUpLayer(String name, SoundDevice... devices) {
        this.name = name;
        this.devices = Arrays.asList(devices);
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public List<SoundDevice> devices() {
        return devices;
    }

    @Override
    public SoundStream open(StreamRequest request) {
        requests.add(request);
        if (trouble != null) {
            throw new SoundTroubleException(trouble);
        }
        LoopStream stream = new LoopStream(request.input().channels().numbers().size(), DELAY);
        faults.accept(stream);
        return stream;
    }
}
