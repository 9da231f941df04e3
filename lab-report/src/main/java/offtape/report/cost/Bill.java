package offtape.report.cost;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.report.fault.FaultNote;

/**
 * What getting a machine right costs, set against what it is worth.
 *
 * @param currency of all sums
 * @param repairs parts and paid work
 * @param hours work, paid or not
 * @param paid for the machine itself
 * @param value of one in good order
 * @param margin by how much cost may exceed the value
 * @param remarks where figures are not the owner's, plain sentences
 */
public record Bill(
        String currency,
        Span repairs,
        Span hours,
        double paid,
        double value,
        double margin,
        List<String> remarks) {

    private static final Sentences SAID = Sentences.near(Bill.class);

    /** Whether the cost is in a sensible relation to the value. */
    public enum Worth {
        /** At the most as well. */
        YES,
        /** In the middle, not at the most. */
        LIKELY,
        /** At the least; how much more it may be is not known. */
        OPEN,
        /** At the least, not in the middle. */
        HARDLY,
        /** Not even at the least. */
        NO
    }

    /** Copies the list so that the record cannot change. */
    public Bill {
        remarks = List.copyOf(remarks);
    }

    /**
     * The bill for some faults.
     *
     * @param faults each once
     * @param isPartUnknown whether something must be mended of which no cause is known
     */
    public static Bill of(Economics economics, List<FaultNote> faults, boolean isPartUnknown) {
        Span parts = Span.ZERO;
        Span hours = Span.ZERO;
        List<String> typical = new ArrayList<>();
        List<String> unpriced = new ArrayList<>();
        for (FaultNote fault : faults) {
            Optional<Repair> said = economics.repair(fault.code());
            boolean timed = said.map(Repair::hoursLow).isPresent();
            boolean priced = said.map(Repair::partsLow).isPresent();
            parts =
                    parts.plus(
                            priced
                                    ? new Span(said.get().partsLow(), said.get().partsHigh())
                                    : TypicalWork.parts(fault.effort()));
            hours =
                    hours.plus(
                            timed
                                    ? new Span(said.get().hoursLow(), said.get().hoursHigh())
                                    : TypicalWork.hours(fault.effort()));
            if (!timed) {
                typical.add(fault.name());
            }
            if (!priced && TypicalWork.parts(fault.effort()).high() == null) {
                unpriced.add(fault.name());
            }
        }
        for (OtherRepair other : economics.otherRepairs()) {
            parts = parts.plus(other.parts());
            hours = hours.plus(other.hours());
        }
        Span cost = parts.plus(hours.times(economics.rate()));
        return new Bill(
                economics.currency(),
                isPartUnknown ? cost.orMore() : cost,
                isPartUnknown ? hours.orMore() : hours,
                economics.paid(),
                economics.valueOfAGoodOne(),
                economics.margin() == null ? 0 : economics.margin(),
                remarks(typical, unpriced, isPartUnknown));
    }

    private static List<String> remarks(
            List<String> typical, List<String> unpriced, boolean isPartUnknown) {
        List<String> remarks = new ArrayList<>();
        if (!typical.isEmpty()) {
            remarks.add(SAID.say("remark.typical", String.join("; ", typical)));
        }
        if (!unpriced.isEmpty()) {
            remarks.add(SAID.say("remark.unpriced", String.join("; ", unpriced)));
        }
        if (isPartUnknown) {
            remarks.add(SAID.say("remark.cause-unknown"));
        }
        return remarks;
    }

    /** Machine and repairs. */
    Span total() {
        return repairs.plus(new Span(paid, paid));
    }

    /** Whether it is worth it. */
    public Worth worth() {
        double most = value + margin;
        Span total = total();
        if (total.low() > most) {
            return Worth.NO;
        }
        if (total.high() == null) {
            return Worth.OPEN;
        }
        if (total.high() <= most) {
            return Worth.YES;
        }
        return total.middle() <= most ? Worth.LIKELY : Worth.HARDLY;
    }

    /** The sums and what follows from them, plain sentences. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        words.add(costs() + " " + withMachine() + " " + worthOfAGoodOne());
        words.add(conclusion());
        words.addAll(remarks);
        return words;
    }

    private String costs() {
        String work = SAID.say("hours-of-work", hours.words());
        String low = Span.number(repairs.low());
        return switch (repairs.shape()) {
            case LEAST -> SAID.say("costs.least", low, currency, work);
            case EXACT -> SAID.say("costs.exact", low, currency, work);
            case RANGE -> SAID.say("costs.range", low, Span.number(repairs.high()), currency, work);
        };
    }

    private String withMachine() {
        Span total = total();
        String machine = Span.number(paid);
        String low = Span.number(total.low());
        return switch (total.shape()) {
            case LEAST -> SAID.say("total.least", machine, currency, low, currency);
            case EXACT -> SAID.say("total.exact", machine, currency, low, currency);
            case RANGE ->
                    SAID.say(
                            "total.range",
                            machine,
                            currency,
                            low,
                            Span.number(total.high()),
                            currency);
        };
    }

    private String worthOfAGoodOne() {
        String good = Span.number(value);
        return margin > 0
                ? SAID.say("good-one.margin", good, currency, Span.number(margin), currency)
                : SAID.say("good-one", good, currency);
    }

    private String conclusion() {
        return SAID.say(
                switch (worth()) {
                    case YES -> "worth.yes";
                    case LIKELY -> "worth.likely";
                    case OPEN -> "worth.open";
                    case HARDLY -> "worth.hardly";
                    case NO -> "worth.no";
                });
    }
}
