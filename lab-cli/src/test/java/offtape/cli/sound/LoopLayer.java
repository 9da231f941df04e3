package offtape.cli.sound;

import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;

/** A made-up sound layer whose streams lead through a machine; faults can be put into each. */
public final class LoopLayer implements SoundLayer {

    private final LoopMachine machine;
    private final List<MachineStream> opened = new ArrayList<>();
    private BiConsumer<Integer, MachineStream> faults = (number, stream) -> {};

    /** A layer with a machine behind it. */
    public LoopLayer(LoopMachine machine) {
        this.machine = machine;
    }

    /** Puts faults into each stream, counted from 1, when it is opened. */
    public LoopLayer with(BiConsumer<Integer, MachineStream> put) {
        faults = put;
        return this;
    }

    /** As commands take it. */
    public SoundLayers layers() {
        return new SoundLayers(List.of(this));
    }

    /** How many streams were opened. */
    public int count() {
        return opened.size();
    }

    /** One of them, counted from 1. */
    public MachineStream stream(int number) {
        return opened.get(number - 1);
    }

    @Override
    public String name() {
        return "loop";
    }

    @Override
    public List<SoundDevice> devices() {
        return List.of();
    }

    @Override
    public SoundStream open(StreamRequest request) {
        MachineStream stream =
                new MachineStream(
                        machine,
                        request.sampleRateHz(),
                        request.output().channels().numbers().size(),
                        request.input().channels().numbers().size());
        opened.add(stream);
        faults.accept(opened.size(), stream);
        return stream;
    }
}
