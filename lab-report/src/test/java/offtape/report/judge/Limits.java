package offtape.report.judge;

import java.util.List;

/** Limits written in short. */
final class Limits {

    private Limits() {}

    /** Of a figure; a bound that is null is none. */
    static Limit of(String quantity, Double least, Double most) {
        return new Limit(quantity, least, most, null, null, null, null, null, null, null);
    }

    /** Of the levels of a response. */
    static Limit levels(double fromHz, double toHz, Double lowDb, Double highDb) {
        return new Limit("response", null, null, fromHz, toHz, lowDb, highDb, null, null, null);
    }

    /** Of the width of a response. */
    static Limit width(double fromHz, double toHz, double widthDb) {
        return new Limit("response", null, null, fromHz, toHz, null, null, widthDb, null, null);
    }

    /** Of a figure at one tape speed, in a clause. */
    static Limit at(double mmPerS, String quantity, double most, String clause) {
        return new Limit(quantity, null, most, null, null, null, null, null, mmPerS, clause);
    }

    static LimitSet set(Limit... limits) {
        return new LimitSet(
                LimitSet.FORMAT, LimitSet.VERSION, "house rule", "invented", List.of(limits));
    }
}
