package offtape.core.machine;

import org.apache.commons.math3.complex.Complex;

/**
 * What a steady sine of the programme becomes in the return of one channel, without noise and
 * flutter: small-signal response by the exact response of the filters that run, harmonics by the
 * Fourier components of the curve of record amplifier and tape. What the interface's input adds to
 * them is not in it, for it is not the machine's; in a loopback it is all there is.
 */
public final class SteadyTone {

    private static final double REFERENCE_TONE_HZ = 1000;

    private final ChannelChain chain;
    private final InputCurve input;
    private final double rate;
    private final double referencePeak;
    private final double bandHz;

    SteadyTone(MachineRun run, int channel) {
        this.chain = run.chains().get(channel);
        this.input =
                run.hasTape() ? null : InputCurve.of(run.spec().recorder(), run.referencePeak());
        this.rate = run.timeMap().meanRate();
        this.referencePeak = run.referencePeak();
        this.bandHz = Math.min(run.programmeRateHz(), run.sampleRateHz() / rate) / 2;
    }

    /** Small-signal gain from programme to return at a frequency of the programme, a ratio. */
    public double gain(double frequencyHz) {
        return chain.response(frequencyHz, rate).abs();
    }

    /**
     * Peak of a harmonic in the return, full-scale units.
     *
     * @param harmonic 1 (the fundamental) to 9
     * @param frequencyHz frequency of the tone in the programme
     * @param levelDb its level in the programme, dB re reference
     * @return 0 if the harmonic lies beyond half the sample rate
     */
    public double peak(int harmonic, double frequencyHz, double levelDb) {
        if (harmonic * frequencyHz >= bandHz) {
            return 0;
        }
        double programme = referencePeak * Math.pow(10, levelDb / 20);
        double field = programme * chain.recording(frequencyHz).abs();
        if (input != null) {
            return input.peak(harmonic, chain.replaying(frequencyHz, rate).abs() * field);
        }
        Complex replaying = chain.replaying(harmonic * frequencyHz, rate);
        return replaying.abs() * written(harmonic, field);
    }

    /** Peak of the returned reference tone, 1 kHz at 0 dB, full-scale units. */
    public double referenceReturnPeak() {
        return peak(1, REFERENCE_TONE_HZ, 0);
    }

    /** A peak of the return as a level re the returned reference tone, dB. */
    public double levelDb(double returnPeak) {
        return 20 * Math.log10(returnPeak / referenceReturnPeak());
    }

    /** A harmonic re the fundamental in the return, percent. */
    public double harmonicPercent(int harmonic, double frequencyHz, double levelDb) {
        return 100 * peak(harmonic, frequencyHz, levelDb) / peak(1, frequencyHz, levelDb);
    }

    /** How far the fundamental lies under its small-signal line, dB. */
    public double compressionDb(double frequencyHz, double levelDb) {
        double line = gain(frequencyHz) * referencePeak * Math.pow(10, levelDb / 20);
        return 20 * Math.log10(line / peak(1, frequencyHz, levelDb));
    }

    /** Whether anything bends on the way onto the tape. */
    boolean saturates() {
        return chain.magnetisation() != null;
    }

    /** End of the band in programme frequencies, hertz. */
    double bandHz() {
        return bandHz;
    }

    private double written(int harmonic, double field) {
        if (chain.magnetisation() == null) {
            return harmonic == 1 ? field : 0;
        }
        return chain.magnetisation().curve().harmonics(field).peak(harmonic);
    }
}
