package offtape.core.machine;

import java.util.function.DoubleUnaryOperator;
import offtape.core.machine.spec.EqualisationSpec;
import offtape.core.machine.spec.HeadsSpec;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.standard.TapeLoss;
import offtape.core.unit.Decibels;

/**
 * What tape, heads and bias lose by wavelength, as one zero-phase filter on the programme's time
 * axis, where λ = v/f at the nominal speed, together with the band limit that reading needs.
 */
final class TapeKernel {

    private static final double PASS = 0.92;

    private TapeKernel() {}

    /** The band limit alone: flat to 92 % of {@code stopHz}, nothing above it. */
    static Kernel bandLimit(double programmeRateHz, double stopHz) {
        return Kernel.lowPass(Tape.OVERSAMPLING * programmeRateHz, PASS * stopHz, stopHz);
    }

    /**
     * Losses, wrong equalisation and band limit.
     *
     * @param channel 0 left or 1 right
     */
    static Kernel of(
            MachineSpec spec, int channel, Bias bias, double programmeRateHz, double stopHz) {
        Kernel band = bandLimit(programmeRateHz, stopHz);
        HeadsSpec heads = spec.heads();
        EqualisationSpec shelf = spec.electronics().equalisation();
        boolean lossless =
                heads.gapMicrometres(channel) == 0
                        && heads.spacingLossMicrometres(channel) == 0
                        && heads.thicknessMicrometres() == 0
                        && heads.azimuthArcMinutes() == 0
                        && bias.isAsSet();
        if (lossless && shelf == null) {
            return band;
        }
        DoubleUnaryOperator magnitude =
                f -> losses(heads, channel, bias, spec.tapeSpeedMmPerS(), f) * shelf(shelf, f);
        int reach = Tape.OVERSAMPLING * BlockGeometry.at(programmeRateHz).reach();
        return band.then(Kernel.ofMagnitude(band.rateHz(), reach - band.half(), magnitude));
    }

    private static double losses(
            HeadsSpec heads, int channel, Bias bias, double speedMmPerS, double frequencyHz) {
        double wavelength = TapeLoss.wavelengthUm(speedMmPerS, frequencyHz);
        double gap = TapeLoss.EFFECTIVE_GAP_FACTOR * heads.gapMicrometres(channel);
        double width = 1000 * heads.trackWidthMm();
        return Decibels.toAmplitude(
                TapeLoss.spacingDb(heads.spacingLossMicrometres(channel), wavelength)
                        + TapeLoss.gapDb(gap, wavelength)
                        + TapeLoss.thicknessDb(heads.thicknessMicrometres(), wavelength)
                        + TapeLoss.azimuthDb(width, heads.azimuthArcMinutes(), wavelength)
                        + bias.shortWaveDb(wavelength));
    }

    private static double shelf(EqualisationSpec shelf, double frequencyHz) {
        if (shelf == null) {
            return 1;
        }
        double omega = 2e-6 * Math.PI * frequencyHz;
        return Math.hypot(1, omega * shelf.replayMicroseconds())
                / Math.hypot(1, omega * shelf.tapeMicroseconds());
    }
}
