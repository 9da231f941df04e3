package offtape.core.machine;

import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.ModulationNoiseSpec;
import offtape.core.unit.Decibels;

/**
 * What bias that is not as it was set does to one channel's recording. Which way each thing goes is
 * common practice, no source; the amounts are chosen so that a session shows what a badly biased
 * machine shows, and are no model of a particular tape.
 *
 * @param overDb bias re that set, dB; negative is too little
 */
record Bias(double overDb) {

    /** 10 kHz at 190.5 mm/s, where a decibel of bias moves the response by a decibel. */
    private static final double PIVOT_MICROMETRES = 19.05;

    private static final double MOST_LIFT_DB = 6;
    private static final double LOSS_UNDER = 1 / 16.0;
    private static final double LOSS_OVER = 1 / 32.0;
    private static final double LINEARITY_OVER = 0.3;
    private static final double MOST_LINEARITY_DB = 3;
    private static final double MODULATION_RISE = 3;
    private static final double MODULATION_FLOOR_DB = -62;
    private static final double MOST_MODULATION_DB = -27;
    private static final double HISS_RISE = 0.5;

    /** Bias of a channel, 0 left or 1 right. */
    static Bias of(MachineSpec spec, int channel) {
        return new Bias(spec.bias().channelDb(channel));
    }

    /** Whether it is as it was set. */
    boolean isAsSet() {
        return overDb == 0;
    }

    /**
     * Gain at a wavelength, dB. More bias erases what is short while it is written, as a spacing
     * does: in proportion to 1/λ. Less lifts it as much, but to no more than 6 dB: 6·tanh(x/6).
     */
    double shortWaveDb(double wavelengthUm) {
        double lift = -overDb * PIVOT_MICROMETRES / wavelengthUm;
        return lift <= 0 ? lift : MOST_LIFT_DB * StrictMath.tanh(lift / MOST_LIFT_DB);
    }

    /**
     * Level of a small tone of 1 kHz re that at the bias set, dB: highest there, 1 dB less with 4
     * dB too little, 0.3 dB less with 3 dB too much.
     */
    double sensitivityDb() {
        return -overDb * overDb * (overDb < 0 ? LOSS_UNDER : LOSS_OVER);
    }

    /**
     * By how much the level of 3 % third harmonic moves, dB: as much as bias is missing, and by 0.3
     * dB for each decibel of the first three that are too many.
     */
    double thirdHarmonicShiftDb() {
        return overDb < 0 ? overDb : LINEARITY_OVER * Math.min(MOST_LINEARITY_DB, overDb);
    }

    /** Rise of hiss, dB: half a decibel for each that is missing. */
    double hissDb() {
        return HISS_RISE * underDb();
    }

    /**
     * The fluctuation of what is recorded. With too little bias that of the tape rises by 3 dB for
     * each decibel that is missing, and one of its own comes in, −62 dB at the first and in
     * proportion to the decibels; its rates are the tape's, where that has none the usual ones.
     *
     * @param tape the tape's own, or null for none
     * @return null for none
     */
    ModulationNoiseSpec modulation(ModulationNoiseSpec tape) {
        if (underDb() == 0) {
            return tape;
        }
        double power = underDb() * underDb() * Decibels.toPower(MODULATION_FLOOR_DB);
        if (tape != null) {
            power += Decibels.toPower(tape.levelDb() + MODULATION_RISE * underDb());
        }
        double levelDb = Math.max(-100, Math.min(MOST_MODULATION_DB, Decibels.ofPower(power)));
        return new ModulationNoiseSpec(
                levelDb, tape == null ? null : tape.lowHz(), tape == null ? null : tape.highHz());
    }

    private double underDb() {
        return Math.max(0, -overDb);
    }
}
