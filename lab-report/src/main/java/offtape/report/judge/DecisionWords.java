package offtape.report.judge;

import offtape.core.text.Sentences;
import offtape.report.result.Verdict;

/** A decision as one reads it. */
public final class DecisionWords {

    private static final Sentences SAID = Sentences.near(DecisionWords.class);

    private DecisionWords() {}

    /** One short sentence. */
    public static String of(Verdict verdict) {
        return switch (verdict.decision() == null ? "" : verdict.decision()) {
            case "keep" -> SAID.say("decision.keep");
            case "service" -> SAID.say("decision.service");
            case "let-go" -> SAID.say("decision.let-go");
            default -> SAID.say("decision.open");
        };
    }
}
