package offtape.report.cost;

import offtape.core.fault.UnusableInputException;
import offtape.core.json.Nearest;
import offtape.core.json.Range;
import offtape.core.text.Sentences;
import offtape.reference.FaultFiles;

/**
 * What mending one fault takes, by the figures of the machine's owner.
 *
 * @param fault code of the fault
 * @param partsLow what the parts cost at least, or null if that is not known
 * @param partsHigh what they cost at most; given together with the least
 * @param hoursLow how long the work takes at least, hours, or null if that is not known
 * @param hoursHigh how long at most; given together with the least
 * @param repairable false if it cannot be mended, since parts are no longer to be had for instance
 */
public record Repair(
        String fault,
        Double partsLow,
        Double partsHigh,
        Double hoursLow,
        Double hoursHigh,
        Boolean repairable) {

    private static final Sentences SAID = Sentences.near(Repair.class);

    /**
     * Checks the figures.
     *
     * @throws UnusableInputException in a plain sentence
     */
    public Repair {
        Range.require(FaultFiles.codes().contains(String.valueOf(fault)), unknown(fault));
        Amounts.check("parts", partsLow, partsHigh, Amounts.MOST_MONEY, SAID.say("in-money"));
        Amounts.check("hours", hoursLow, hoursHigh, Amounts.MOST_HOURS, SAID.say("hours"));
    }

    /** Whether it can be mended at all. */
    boolean canBeMended() {
        return !Boolean.FALSE.equals(repairable);
    }

    private static String unknown(String fault) {
        return SAID.say("no-fault", fault)
                + Nearest.to(String.valueOf(fault), FaultFiles.codes())
                        .map(n -> " " + SAID.say("perhaps", n))
                        .orElse("")
                + " "
                + SAID.say("known-faults", String.join(", ", FaultFiles.codes()));
    }
}
