package offtape.report.cost;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.Range;
import offtape.core.json.StrictJson;
import offtape.core.text.Sentences;

/**
 * What a machine costs and is worth, by the figures of its owner. No currency is built in: all sums
 * are in the one that is named.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param note the owner's remark, or null
 * @param currency short name of the currency
 * @param paid what the machine itself costs: the price asked, or what it would bring as it is
 * @param valueOfAGoodOne what one in good order is worth
 * @param margin by how much cost may exceed that value, null for nothing
 * @param hourlyRate what an hour of work costs; may be null if own hours are free
 * @param ownHoursFree whether hours cost nothing since the owner does the work; null for no
 * @param repairable whether a cause that is not known could be looked for and mended; null for yes
 * @param repairs what mending single faults takes
 * @param otherRepairs what must be paid for whatever is found
 */
public record Economics(
        String format,
        int version,
        String note,
        String currency,
        Double paid,
        Double valueOfAGoodOne,
        Double margin,
        Double hourlyRate,
        Boolean ownHoursFree,
        Boolean repairable,
        List<Repair> repairs,
        List<OtherRepair> otherRepairs) {

    private static final Sentences SAID = Sentences.near(Economics.class);

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-economics";

    /** The version read here. */
    public static final int VERSION = 1;

    private static final StrictJson<Economics> JSON =
            new StrictJson<>(Economics.class, SAID.say("file"));

    private static final int LONGEST_CURRENCY = 12;

    /**
     * Checks the figures.
     *
     * @throws UnusableInputException in a plain sentence
     */
    public Economics {
        Range.require(FORMAT.equals(format) && version == VERSION, SAID.say("format", FORMAT));
        Range.require(
                currency != null
                        && currency.matches("\\P{Cntrl}+")
                        && !currency.isBlank()
                        && currency.length() <= LONGEST_CURRENCY,
                SAID.say("currency"));
        Range.require(paid != null && valueOfAGoodOne != null, SAID.say("paid-and-value"));
        Range.within("paid", paid, 0, Amounts.MOST_MONEY, currency);
        Range.within("valueOfAGoodOne", valueOfAGoodOne, 0, Amounts.MOST_MONEY, currency);
        Range.within("margin", margin, 0, Amounts.MOST_MONEY, currency);
        Range.within("hourlyRate", hourlyRate, 0, Amounts.MOST_MONEY, currency);
        Range.require(
                hourlyRate != null || Boolean.TRUE.equals(ownHoursFree), SAID.say("hourly-rate"));
        repairs = Range.copy("repairs", repairs);
        otherRepairs = Range.copy("otherRepairs", otherRepairs);
        Range.require(
                repairs.stream().map(Repair::fault).distinct().count() == repairs.size(),
                SAID.say("fault-twice"));
    }

    /**
     * Reads a file.
     *
     * @throws UnusableInputException if it cannot be used, with the place
     */
    public static Economics of(Path file) {
        return JSON.read(file);
    }

    /** Whether a fault can be mended at all. */
    public boolean canMend(String fault) {
        return repair(fault).map(Repair::canBeMended).orElse(true);
    }

    /** Whether a cause that is not known could be looked for and mended. */
    public boolean canMendUnknown() {
        return !Boolean.FALSE.equals(repairable);
    }

    /** What an hour costs. */
    double rate() {
        return Boolean.TRUE.equals(ownHoursFree) ? 0 : hourlyRate;
    }

    /** What the owner says of a fault. */
    Optional<Repair> repair(String fault) {
        return repairs.stream().filter(r -> r.fault().equals(fault)).findFirst();
    }

    /** A form to be filled in. */
    public static String template() {
        return """
                {
                  "format": "offtape-economics",
                  "version": 1,
                  "note": "paid: the price asked, or what it would bring as it is; margin: by how much cost may exceed the value; delete the lines you cannot fill in",
                  "currency": "EUR",
                  "paid": 150,
                  "valueOfAGoodOne": 400,
                  "margin": 0,
                  "hourlyRate": 60,
                  "ownHoursFree": false,
                  "repairable": true,
                  "repairs": [
                    {"fault": "dirty-head", "partsLow": 5, "partsHigh": 10, "hoursLow": 0.25, "hoursHigh": 0.5},
                    {"fault": "pinch-roller", "partsLow": 25, "partsHigh": 60, "hoursLow": 0.5, "hoursHigh": 1.5},
                    {"fault": "worn-head", "partsLow": 120, "partsHigh": 300, "hoursLow": 2, "hoursHigh": 4, "repairable": true}
                  ],
                  "otherRepairs": [
                    {"name": "carriage", "partsLow": 20, "partsHigh": 40}
                  ]
                }
                """;
    }
}
