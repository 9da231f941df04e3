package offtape.cli.transfer;

import offtape.core.unit.Decibels;

/** By how much a stem is raised before the machine. */
@FunctionalInterface
public interface Drive {

    /**
     * The raise.
     *
     * @param peak of the stem, full-scale units
     * @return dB
     */
    double dbFor(double peak);

    /** The same for all stems. */
    static Drive by(double db) {
        return peak -> db;
    }

    /** So that each stem's peak lies at a level, dB re full scale; silence is not raised. */
    static Drive peakAt(double dbfs) {
        return peak -> peak > 0 ? dbfs - Decibels.ofAmplitude(peak) : 0;
    }
}
