package offtape.report.fault;

import java.util.Locale;
import offtape.core.text.Sentences;
import offtape.report.fault.symptom.Joining;
import offtape.report.fault.symptom.Symptom;

/** A symptom with its value in words. */
final class SymptomWords {

    private static final Sentences SAID = Sentences.near(SymptomWords.class);

    /** Sound machines lie within so many spreads of their mean. */
    private static final double WITHIN = 2;

    private SymptomWords() {}

    /** The figure beside what sound machines show. */
    static String beside(Evidence.Shown s) {
        Symptom symptom = s.symptom();
        if (symptom.unit().isEmpty()) {
            return symptom.words() + ".";
        }
        String high = value(symptom, s.mean() + WITHIN * s.spread());
        String usual =
                symptom.joining() == Joining.SUM
                        ? amount(
                                symptom,
                                value(symptom, s.mean() - WITHIN * s.spread()) + " to " + high)
                        : SAID.say("up-to", amount(symptom, high));
        return SAID.say(
                "beside", symptom.words(), amount(symptom, value(symptom, s.shown())), usual);
    }

    /** What the figure would be with another fault, and is. */
    static String against(Evidence.Shown s, double expected) {
        Symptom symptom = s.symptom();
        if (symptom.unit().isEmpty()) {
            boolean there = Math.abs(s.shown()) >= 0.5;
            return SAID.say(there ? "not-explained" : "would-be-seen", symptom.words());
        }
        return SAID.say(
                "against",
                symptom.words(),
                amount(symptom, value(symptom, expected)),
                amount(symptom, value(symptom, s.shown())));
    }

    /** A number, or two from one to the other, with the unit of a symptom. */
    static String amount(Symptom symptom, String number) {
        return switch (symptom.unit()) {
            case "decades" -> SAID.say("amount.decades", number);
            case "a minute" -> SAID.say("amount.a-minute", number);
            default -> number + " " + symptom.unit();
        };
    }

    /** A place on a symptom's scale as a number, without its unit. */
    static String value(Symptom symptom, double scaled) {
        double value = symptom.scale().back(scaled);
        double size = Math.abs(value);
        String text;
        if (symptom.unit().equals("dB") || size >= 10) {
            text = String.format(Locale.ROOT, size >= 100 ? "%.0f" : "%.1f", value);
        } else {
            text =
                    String.format(
                            Locale.ROOT, size >= 1 ? "%.1f" : size >= 0.1 ? "%.2f" : "%.3f", value);
        }
        return text.replace('-', '−');
    }
}
