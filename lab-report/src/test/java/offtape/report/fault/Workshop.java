package offtape.report.fault;

import offtape.core.machine.spec.MachineSpec;
import offtape.report.fault.symptom.TapeKind;
import offtape.report.measure.MachineDraft;

/**
 * A simulated machine under way: its description and what the faults need to know of it.
 *
 * @param draft its description
 * @param mmPerS tape speed
 * @param full whether the full programme is played, not the short one
 */
record Workshop(MachineDraft draft, double mmPerS, boolean full) {

    boolean isCassette() {
        return TapeKind.isCassette(mmPerS);
    }

    Workshop with(String path, double value) {
        return new Workshop(draft.with(path, value), mmPerS, full);
    }

    Workshop with(String path, String json) {
        return new Workshop(draft.with(path, json), mmPerS, full);
    }

    /** Wavelength of 10 kHz, µm. */
    double waveUm() {
        return mmPerS * 1000 / 10_000;
    }

    MachineSpec spec() {
        return draft.spec();
    }
}
