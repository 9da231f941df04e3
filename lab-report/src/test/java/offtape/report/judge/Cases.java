package offtape.report.judge;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import offtape.report.cost.Economics;
import offtape.report.fault.FaultCatalogue;
import offtape.report.fault.FaultNote;
import offtape.report.result.Verdict;

/** Situations written in short: {@code wow=fail}, {@code dirty-head/left=0.9}, {@code wow}. */
final class Cases {

    private Cases() {}

    static Situation situation(
            String mode, String checks, String suspects, Double sound, String missing) {
        return situation(mode, checks, suspects, sound, missing, null);
    }

    static Situation situation(
            String mode,
            String checks,
            String suspects,
            Double sound,
            String missing,
            Economics economics) {
        return new Situation(
                mode,
                checks.isEmpty() ? null : LimitSet.of("din45500-4"),
                words(checks).map(Cases::check).toList(),
                Suspect.likely(words(suspects).map(Cases::fault).toList(), Cases::note),
                sound,
                words(missing).map(m -> gap(m, mode)).toList(),
                List.of(),
                economics);
    }

    private static Stream<String> words(String text) {
        return Arrays.stream(text.split(" ")).filter(w -> !w.isEmpty());
    }

    private static Verdict.Check check(String text) {
        String[] parts = text.split("=");
        String[] place = parts[0].split("/");
        Judged judged = Judged.named(place[0]).orElseThrow();
        String quantity = judged.words() + (place.length > 1 ? ", " + place[1] : "");
        return parts[1].equals("unknown")
                ? new Verdict.Check(
                        quantity,
                        null,
                        "at most 1",
                        parts[1],
                        "made up",
                        judged.unit(),
                        null,
                        null,
                        "It was not heard.")
                : new Verdict.Check(
                        quantity,
                        0.123456,
                        "at most 1 " + judged.unit(),
                        parts[1],
                        "made up",
                        judged.unit(),
                        0.02,
                        0.0,
                        null);
    }

    private static Verdict.Fault fault(String text) {
        String[] parts = text.split("=");
        String[] place = parts[0].split("/");
        return new Verdict.Fault(
                place[0],
                place[0],
                place.length > 1 ? place[1] : null,
                Double.parseDouble(parts[1]),
                List.of("The figures of " + place[0] + " say so."),
                List.of(),
                "Try.",
                null);
    }

    private static Gap gap(String key, String mode) {
        Judged judged = Judged.named(key).orElseThrow();
        return Gap.of(judged, mode, judged.words(), "It was not played.");
    }

    /** What would stand in the catalogue, in words of our own but for what it worsens. */
    static FaultNote note(String code) {
        String effort =
                switch (code) {
                    case "dirty-head" -> "clean";
                    case "azimuth", "speed-setting" -> "adjust";
                    case "ground-loop", "dropouts" -> "outside";
                    default -> "replace";
                };
        String caution = effort.equals("clean") ? "moving-tape" : "mains";
        return new FaultNote(
                code,
                "The " + code,
                "one-or-both",
                List.of(),
                FaultCatalogue.of(code).moves(),
                "",
                "made up",
                List.of(),
                "Look at the " + code + ".",
                "Mend the " + code + ".",
                effort,
                "All is well without the " + code + ".",
                "Measure the " + code + ".",
                effort.equals("outside") ? List.of() : List.of(caution));
    }
}
