package offtape.report.cost;

import offtape.core.fault.UnusableInputException;
import offtape.core.json.Range;
import offtape.core.text.Sentences;

/**
 * Something that must be paid for whatever is found, such as a set of rubber parts or carriage.
 *
 * @param name what it is
 * @param partsLow what it costs at least, without work
 * @param partsHigh what it costs at most
 * @param hoursLow how long the work takes at least, hours
 * @param hoursHigh how long at most
 */
public record OtherRepair(
        String name, Double partsLow, Double partsHigh, Double hoursLow, Double hoursHigh) {

    private static final Sentences SAID = Sentences.near(OtherRepair.class);

    /**
     * Checks the figures; what is not given is nothing.
     *
     * @throws UnusableInputException in a plain sentence
     */
    public OtherRepair {
        Range.require(name != null && !name.isBlank(), SAID.say("other-name"));
        Amounts.check("parts", partsLow, partsHigh, Amounts.MOST_MONEY, SAID.say("in-money"));
        Amounts.check("hours", hoursLow, hoursHigh, Amounts.MOST_HOURS, SAID.say("hours"));
    }

    /** Cost without work. */
    Span parts() {
        return partsLow == null ? Span.ZERO : new Span(partsLow, partsHigh);
    }

    /** Work, hours. */
    Span hours() {
        return hoursLow == null ? Span.ZERO : new Span(hoursLow, hoursHigh);
    }
}
