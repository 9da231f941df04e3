package offtape.core.machine;

import java.util.ArrayList;
import java.util.List;
import offtape.core.machine.spec.ChannelElectronicsSpec;
import offtape.core.machine.spec.HeadBumpSpec;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.RecorderSpec;
import offtape.core.transport.CaptureMode;
import org.apache.commons.math3.complex.Complex;

/**
 * Everything one channel's signal goes through, as filters that both the simulation runs and the
 * truth evaluates. What belongs to the tape works on the programme's time axis, where a second is a
 * length of tape; what belongs to amplifiers works on the return's.
 *
 * @param recordGain gain ahead of the tape, a ratio
 * @param magnetisation the recording process, or null if nothing bends there
 * @param contour the head's low-frequency contour
 * @param kernel tape losses and band limit, at twice the programme's rate
 * @param replay amplifier and interface
 * @param replayGain gain after the tape, a ratio, negative if the polarity is inverted. It is lined
 *     up so that a small 1 kHz tone returns at its own level but for the stated gains and what the
 *     bias takes of it, whatever the losses
 */
record ChannelChain(
        double recordGain,
        Magnetisation magnetisation,
        List<Section> contour,
        Kernel kernel,
        List<Section> replay,
        double replayGain) {

    private static final double LINE_UP_HZ = 1000;

    /**
     * The chain of a channel.
     *
     * @param channel 0 left or 1 right
     * @param programmeRateHz sample rate of the programme
     * @param returnRateHz sample rate of the return
     * @param pitch of the return re the programme
     * @param referencePeak peak of a sine at reference level
     */
    static ChannelChain of(
            MachineSpec spec,
            int channel,
            int programmeRateHz,
            int returnRateHz,
            Pitch pitch,
            double referencePeak) {
        double stopHz = Math.min(programmeRateHz, returnRateHz / Math.max(1, pitch.highest())) / 2;
        List<Section> replay = new ArrayList<>(interfaceSections(spec.recorder(), returnRateHz));
        if (spec.mode() == CaptureMode.LOOPBACK) {
            Kernel band = TapeKernel.bandLimit(programmeRateHz, stopHz);
            return new ChannelChain(1, null, List.of(), band, replay, 1).linedUp(1, 1);
        }
        ChannelElectronicsSpec amplifiers = spec.electronics().channel(channel);
        replay.addAll(amplifierSections(amplifiers, returnRateHz));
        Bias bias = Bias.of(spec, channel);
        double sign = amplifiers.polarityInverted() ? -1 : 1;
        double recordGain = ratio(amplifiers.recordGainDb());
        double replayGain = ratio(amplifiers.replayGainDb());
        ChannelChain chain =
                new ChannelChain(
                        recordGain,
                        Magnetisation.of(spec, channel, programmeRateHz, referencePeak),
                        contour(spec.heads().bumps(), programmeRateHz),
                        TapeKernel.of(spec, channel, bias, programmeRateHz, stopHz),
                        replay,
                        sign);
        double gain = recordGain * replayGain * ratio(bias.sensitivityDb());
        return chain.linedUp(gain, pitch.mean());
    }

    /** Complex gain from the programme to the tape's curve. */
    Complex recording(double frequencyHz) {
        Complex gain = new Complex(recordGain);
        return magnetisation == null
                ? gain
                : gain.multiply(magnetisation.responseBefore(frequencyHz));
    }

    /**
     * Complex gain from the tape's curve to the return, at a frequency of the programme.
     *
     * @param rate mean pitch of the return re the programme: the amplifiers hear f·rate
     */
    Complex replaying(double frequencyHz, double rate) {
        Complex gain = new Complex(replayGain * kernel.response(frequencyHz));
        if (magnetisation != null) {
            gain = gain.multiply(magnetisation.responseAfter(frequencyHz));
        }
        gain = gain.multiply(Sections.response(contour, frequencyHz));
        return gain.multiply(Sections.response(replay, frequencyHz * rate));
    }

    /** Complex small-signal gain from the programme to the return. */
    Complex response(double frequencyHz, double rate) {
        return recording(frequencyHz).multiply(replaying(frequencyHz, rate));
    }

    private ChannelChain linedUp(double gain, double rate) {
        double now = response(LINE_UP_HZ, rate).abs();
        return new ChannelChain(
                recordGain, magnetisation, contour, kernel, replay, replayGain * gain / now);
    }

    private static List<Section> contour(List<HeadBumpSpec> bumps, double rateHz) {
        return bumps.stream()
                .map(b -> Sections.peak(rateHz, b.frequencyHz(), b.gainDb(), b.q()))
                .toList();
    }

    private static List<Section> amplifierSections(ChannelElectronicsSpec spec, double rateHz) {
        List<Section> sections = new ArrayList<>();
        if (spec.lowerEdgeHz() != null) {
            sections.addAll(Sections.highPass(rateHz, spec.lowerEdgeHz(), spec.lowerOrder()));
        }
        if (spec.upperEdgeHz() != null) {
            sections.addAll(Sections.lowPass(rateHz, spec.upperEdgeHz(), spec.upperOrder()));
        }
        return sections;
    }

    private static List<Section> interfaceSections(RecorderSpec spec, double rateHz) {
        List<Section> sections = new ArrayList<>();
        if (spec.lowerEdgeHz() != null) {
            sections.addAll(Sections.highPass(rateHz, spec.lowerEdgeHz(), 1));
        }
        if (spec.upperEdgeHz() != null) {
            sections.addAll(Sections.lowPass(rateHz, spec.upperEdgeHz(), 2));
        }
        return sections;
    }

    private static double ratio(double levelDb) {
        return Math.pow(10, levelDb / 20);
    }
}
