package offtape.core.machine;

import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;

/**
 * One programme on one machine: its return and the truth about it. Memory is that of the motion's
 * table, about 2 MB a minute and pass (10 MB with lines near 500 Hz), whatever the sample rate.
 * Takes about 1.1 s of one processor for a minute of stereo at 48 kHz with everything on, 0.3 s for
 * a transport alone (measured on a shared two-core machine, JDK 17).
 */
public final class MachineRun {

    private static final Sentences SAID = Sentences.near(MachineRun.class);

    private final MachineSpec spec;
    private final int programmeRateHz;
    private final long programmeFrames;
    private final double referencePeak;
    private final int returnRateHz;
    private final TimeMap timeMap;
    private final List<ChannelChain> chains;

    MachineRun(
            MachineSpec spec,
            int programmeRateHz,
            long programmeFrames,
            double referenceDbfs,
            int returnRateHz) {
        this.spec = spec;
        this.programmeRateHz = programmeRateHz;
        this.programmeFrames = programmeFrames;
        this.referencePeak = Math.pow(10, referenceDbfs / 20);
        this.returnRateHz = returnRateHz;
        double length = (double) programmeFrames / programmeRateHz;
        this.timeMap = TimeMap.of(spec, length, returnRateHz);
        Pitch pitch = Pitch.of(timeMap, timeMap.frames(returnRateHz) / (double) returnRateHz);
        this.chains =
                IntStream.range(0, 2)
                        .mapToObj(
                                c ->
                                        ChannelChain.of(
                                                spec,
                                                c,
                                                programmeRateHz,
                                                returnRateHz,
                                                pitch,
                                                referencePeak))
                        .toList();
    }

    /** Sample rate of the return, hertz. */
    public int sampleRateHz() {
        return returnRateHz;
    }

    /** Length of the return in frames. */
    public long frames() {
        return timeMap.frames(returnRateHz);
    }

    /** The true time map of the return. */
    public TimeMap timeMap() {
        return timeMap;
    }

    /** What steady tones become on a channel of the recording, 0 left or 1 right. */
    public SteadyTone tone(int channel) {
        return new SteadyTone(this, channelAt(channel));
    }

    /** The truth about the return. */
    public MachineTruth truth() {
        return MachineTruth.of(this);
    }

    /**
     * Plays the programme and hands its return on, two channels, block by block.
     *
     * @param audio the programme, one channel (which then stands for both) or two
     * @throws UnusableInputException if the sound is not of the rate and length it was said to have
     */
    public void play(AudioSource audio, FrameSink out) {
        if (audio.sampleRateHz() != programmeRateHz || audio.frames() != programmeFrames) {
            throw new UnusableInputException(SAID.say("not-its-sheet", audio.name()));
        }
        new ReturnStream(this, audio).writeAll(out);
    }

    MachineSpec spec() {
        return spec;
    }

    int programmeRateHz() {
        return programmeRateHz;
    }

    double referencePeak() {
        return referencePeak;
    }

    List<ChannelChain> chains() {
        return chains;
    }

    boolean hasTape() {
        return spec.mode() != CaptureMode.LOOPBACK;
    }

    /** Whether left and right are exchanged between the machine and the recording. */
    boolean swapped() {
        return hasTape() && spec.swapped();
    }

    /** The machine's channel that comes in at an input of the recording, both 0 left or 1 right. */
    int channelAt(int input) {
        return swapped() ? 1 - input : input;
    }

    /** By how much the machine's right channel is late on average, seconds of programme. */
    double azimuthDelaySeconds() {
        return delaySeconds(spec.heads().azimuthTangent());
    }

    /** The same at a place on the tape, seconds of the programme, wander included. */
    double azimuthDelaySeconds(double programmeSeconds) {
        return delaySeconds(spec.heads().azimuthTangent(programmeSeconds));
    }

    /** Whether the delay between the channels changes along the tape. */
    boolean azimuthWanders() {
        return hasTape() && !spec.heads().azimuthWander().isEmpty();
    }

    double delaySeconds(double tangent) {
        return hasTape() ? spec.heads().trackSpacingMm() * tangent / spec.tapeSpeedMmPerS() : 0;
    }
}
