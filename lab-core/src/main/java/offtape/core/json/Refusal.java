package offtape.core.json;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidNullException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.InertText;

/** What is wrong with a JSON text, in words. */
final class Refusal {

    private Refusal() {}

    static String inWords(JsonProcessingException e) {
        if (any(e, StreamConstraintsException.class::isInstance)) {
            return "this is nested more deeply, or holds a longer text, name or number, than anything"
                    + " that belongs here"
                    + line(e)
                    + ".";
        }
        if (any(e, Refusal::isDuplicate)) {
            return "a member is there twice" + line(e) + ".";
        }
        if (e instanceof UnrecognizedPropertyException unknown) {
            return unknownMember(unknown);
        }
        if (e instanceof InvalidNullException empty) {
            String list = place(empty).replaceFirst("\\[\\d+]$", "");
            return "\"" + shortened(list) + "\" has an empty entry (null).";
        }
        if (e instanceof JsonMappingException mapping) {
            String where = shortened(place(mapping));
            String prefix = where.isEmpty() ? "" : where + ": ";
            for (Throwable t = e; t != null; t = t.getCause()) {
                if (t instanceof UnusableInputException refusal) {
                    return prefix + refusal.getMessage();
                }
            }
            return prefix + "the value is not of the kind that belongs here" + line(e) + ".";
        }
        return "this is not well-formed JSON" + line(e) + ".";
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
        return "the member \""
                + shortened(place(e))
                + "\" is not known."
                + Nearest.to(e.getPropertyName(), known)
                        .map(n -> " Perhaps \"" + n + "\" is meant.")
                        .orElse("")
                + known.stream().collect(Collectors.joining(", ", " Known here: ", "."));
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

    private static String line(JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        return at == null ? "" : " (line " + at.getLineNr() + ", column " + at.getColumnNr() + ")";
    }
}
