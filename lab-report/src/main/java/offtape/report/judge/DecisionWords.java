package offtape.report.judge;

import offtape.report.result.Verdict;

/** A decision as one reads it. */
public final class DecisionWords {

    private DecisionWords() {}

    /** One short sentence. */
    public static String of(Verdict verdict) {
        return switch (verdict.decision() == null ? "" : verdict.decision()) {
            case "keep" -> "Keep it.";
            case "service" -> "Have it serviced.";
            case "let-go" -> "Let it go.";
            default -> "Not decided yet.";
        };
    }
}
