package offtape.core.machine;

import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.CueSheet;
import offtape.core.text.Sentences;

/**
 * A tape machine whose truth is known: the test bench of the measurements. Deterministic: the same
 * description, programme and rates give the same samples, however they are taken.
 */
public final class SimulatedMachine {

    private static final Sentences SAID = Sentences.near(SimulatedMachine.class);

    private static final int LOWEST_RATE_HZ = 8000;
    private static final int HIGHEST_RATE_HZ = 200_000;

    private final MachineSpec spec;

    private SimulatedMachine(MachineSpec spec) {
        this.spec = spec;
    }

    /** The machine of a description. */
    public static SimulatedMachine of(MachineSpec spec) {
        return new SimulatedMachine(spec);
    }

    /**
     * Puts a programme on, to be returned at its own sample rate.
     *
     * @throws UnusableInputException if the machine cannot move as described or its motion file
     *     cannot be used
     */
    public MachineRun run(CueSheet sheet) {
        return run(
                sheet.sampleRateHz(), sheet.frames(), sheet.referenceDbfs(), sheet.sampleRateHz());
    }

    /**
     * Puts a programme on.
     *
     * @param programmeRateHz sample rate of the programme, 8000 to 200 000 Hz
     * @param programmeFrames its length, at least 1
     * @param referenceDbfs level of a sine at reference, dB re a full-scale sine
     * @param returnRateHz sample rate of the return, 8000 to 200 000 Hz
     * @throws UnusableInputException as above, or if a rate or the length is out of its limits
     */
    public MachineRun run(
            int programmeRateHz, long programmeFrames, double referenceDbfs, int returnRateHz) {
        checkRate("programme-rate", programmeRateHz);
        checkRate("return-rate", returnRateHz);
        if (programmeFrames < 1) {
            throw new UnusableInputException(SAID.say("empty-programme"));
        }
        return new MachineRun(spec, programmeRateHz, programmeFrames, referenceDbfs, returnRateHz);
    }

    private static void checkRate(String key, int rateHz) {
        if (rateHz < LOWEST_RATE_HZ || rateHz > HIGHEST_RATE_HZ) {
            throw new UnusableInputException(SAID.say(key, rateHz));
        }
    }
}
