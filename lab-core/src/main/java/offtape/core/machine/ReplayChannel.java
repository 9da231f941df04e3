package offtape.core.machine;

import java.util.ArrayList;
import java.util.List;
import offtape.core.machine.spec.MachineSpec;

/** What happens to one channel after the head: damage, amplifiers, noise, recorder. */
final class ReplayChannel {

    private final Dropouts dropouts;
    private final List<Section.Running> sections;
    private final double gain;
    private final List<NoiseSource> tapeNoises = new ArrayList<>();
    private final List<NoiseSource> interfaceNoises = new ArrayList<>();
    private final Recorder recorder;

    ReplayChannel(MachineRun run, int channel) {
        MachineSpec spec = run.spec();
        ChannelChain chain = run.chains().get(channel);
        dropouts = Dropouts.of(run.hasTape() ? spec.dropouts() : List.of(), channel);
        sections = Sections.start(chain.replay());
        gain = chain.replayGain();
        ChannelNoise shapes = ChannelNoise.of(run, channel);
        if (shapes.hiss() != null) {
            tapeNoises.add(new NoiseSource(shapes.hiss(), Seeds.hiss(spec.seed(), channel)));
        }
        if (shapes.magnet() != null) {
            tapeNoises.add(new NoiseSource(shapes.magnet(), Seeds.magnet(spec.seed(), channel)));
        }
        if (shapes.interfaceNoise() != null) {
            interfaceNoises.add(
                    new NoiseSource(shapes.interfaceNoise(), Seeds.interfaceNoise(spec, channel)));
        }
        recorder = new Recorder(spec.recorder(), run.referencePeak(), Seeds.dither(spec, channel));
    }

    /** From the head to the machine's output, in place. */
    void amplify(double[] samples, double[] programmeSeconds, int count) {
        dropouts.apply(samples, programmeSeconds, count);
        sections.forEach(section -> section.run(samples, count));
        for (int i = 0; i < count; i++) {
            samples[i] *= gain;
        }
    }

    /** The tape's noise, in place. */
    void addTapeNoise(double[] samples, int count) {
        tapeNoises.forEach(noise -> noise.add(samples, count));
    }

    /** The interface's noise, clipping and rounding, in place. */
    void record(double[] samples, int count) {
        interfaceNoises.forEach(noise -> noise.add(samples, count));
        recorder.apply(samples, count);
    }
}
