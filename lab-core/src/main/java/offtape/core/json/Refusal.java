package offtape.core.json;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidNullException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.InertText;
import offtape.core.text.Sentences;

/** What is wrong with a JSON text, in words. */
final class Refusal {

    private static final Sentences SAID = Sentences.near(Refusal.class);

    private Refusal() {}

    static String inWords(JsonProcessingException e) {
        if (any(e, StreamConstraintsException.class::isInstance)) {
            return placed(e, "too-large", "too-large-at");
        }
        if (any(e, Refusal::isDuplicate)) {
            return placed(e, "twice", "twice-at");
        }
        if (e instanceof UnrecognizedPropertyException unknown) {
            return unknownMember(unknown);
        }
        if (e instanceof InvalidNullException empty) {
            String list = place(empty).replaceFirst("\\[\\d+]$", "");
            return SAID.say("empty-entry", shortened(list));
        }
        if (e instanceof JsonMappingException mapping) {
            String where = shortened(place(mapping));
            String prefix = where.isEmpty() ? "" : where + ": ";
            for (Throwable t = e; t != null; t = t.getCause()) {
                if (t instanceof UnusableInputException refusal) {
                    return prefix + refusal.getMessage();
                }
            }
            return prefix + placed(e, "other-kind", "other-kind-at");
        }
        return placed(e, "not-json", "not-json-at");
    }

    private static boolean any(Throwable e, Predicate<Throwable> which) {
        return which.test(e) || e.getCause() != null && any(e.getCause(), which);
    }

    private static boolean isDuplicate(Throwable e) {
        return e instanceof JsonProcessingException trouble
                && trouble.getOriginalMessage() != null
                && trouble.getOriginalMessage().startsWith("Duplicate field");
    }

    private static String unknownMember(UnrecognizedPropertyException e) {
        List<String> known =
                e.getKnownPropertyIds().stream().map(Object::toString).sorted().toList();
        return Stream.of(
                        Optional.of(SAID.say("unknown-member", shortened(place(e)))),
                        Nearest.to(e.getPropertyName(), known).map(n -> SAID.say("perhaps", n)),
                        Optional.of(SAID.say("known-members", String.join(", ", known))))
                .flatMap(Optional::stream)
                .collect(Collectors.joining(" "));
    }

    private static String place(JsonMappingException e) {
        StringBuilder path = new StringBuilder();
        for (JsonMappingException.Reference step : e.getPath()) {
            if (step.getFieldName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.length() == 0 ? "" : ".").append(step.getFieldName());
            }
        }
        return path.toString();
    }

    private static String shortened(String text) {
        String printable = InertText.line(text);
        return printable.length() <= 120 ? printable : printable.substring(0, 120) + "…";
    }

    /** A sentence that names the place in the text, if it is known. */
    private static String placed(JsonProcessingException e, String placeless, String withPlace) {
        JsonLocation at = e.getLocation();
        return at == null
                ? SAID.say(placeless)
                : SAID.say(withPlace, at.getLineNr(), at.getColumnNr());
    }
}
