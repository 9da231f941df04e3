package offtape.core.machine;

import offtape.core.machine.spec.ChannelElectronicsSpec;
import offtape.core.machine.spec.MachineSpec;

/**
 * What bends a signal on its way onto one track: the record amplifier's curve and then the tape's,
 * with nothing between them, so that both together are one curve without memory.
 *
 * @param amplifier the record amplifier, or null if it is clean
 * @param tape the tape, straight if it does not saturate
 */
record RecordingCurve(SaturationCurve amplifier, SaturationCurve tape) {

    /** The curve of a channel, 0 left or 1 right, or null if nothing bends. */
    static RecordingCurve of(MachineSpec spec, int channel, double referencePeak) {
        ChannelElectronicsSpec electronics = spec.electronics().channel(channel);
        double second = electronics.secondHarmonicPercent();
        double third = electronics.thirdHarmonicPercent();
        boolean clean = second == 0 && third == 0;
        SaturationCurve tape = tape(spec, channel, referencePeak);
        if (clean && tape == null) {
            return null;
        }
        return new RecordingCurve(
                clean ? null : SaturationCurve.ofHarmonics(second, third, referencePeak),
                tape == null ? SaturationCurve.STRAIGHT : tape);
    }

    // A magnetised head bends to one side as an uneven bias does: in the tape's own curve.
    private static SaturationCurve tape(MachineSpec spec, int channel, double referencePeak) {
        double second = spec.heads().magnetisation().secondHarmonicPercent();
        if (spec.saturation() == null) {
            return second == 0 ? null : SaturationCurve.ofHarmonics(second, 0, referencePeak);
        }
        double shiftDb = Bias.of(spec, channel).thirdHarmonicShiftDb();
        return SaturationCurve.of(spec.saturation(), shiftDb, second, referencePeak);
    }

    double of(double x) {
        return tape.of(amplifier == null ? x : amplifier.of(x));
    }

    /** Whether the output has a constant part, which no replay head would hear. */
    boolean rectifies() {
        return tape.rectifies() || amplifier != null && amplifier.rectifies();
    }

    /**
     * Peak of a sine with about 3 % of third harmonic: small ones add up, and each goes with the
     * square of the level.
     */
    double threePercentPeak() {
        return amplifier == null
                ? tape.threePercentPeak()
                : 1 / Math.hypot(1 / tape.threePercentPeak(), 1 / amplifier.threePercentPeak());
    }

    void apply(double[] samples) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] = of(samples[i]);
        }
    }

    Harmonics harmonics(double peak) {
        return Harmonics.of(this::of, peak);
    }
}
