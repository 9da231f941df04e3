package offtape.report.result;

import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;

/** Figures as they are read back, where one may be missing. */
final class Told {

    private static final Sentences SAID = Sentences.near(Told.class);

    private Told() {}

    /** The figure, or that it is unknown. */
    static Quantity orUnknown(Quantity figure) {
        return figure == null ? Quantity.unknown(SAID.say("not-told")) : figure;
    }
}
