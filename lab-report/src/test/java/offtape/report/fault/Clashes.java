package offtape.report.fault;

import java.util.List;
import java.util.Set;

/** Faults that one simulated machine cannot have together, as they are told by the same members. */
final class Clashes {

    private static final List<Set<String>> TOGETHER =
            List.of(
                    Set.of("capstan", "pinch-roller", "motor-ripple"),
                    Set.of("wrong-mains", "speed-setting"),
                    Set.of("ground-loop", "supply-hum"),
                    Set.of("bias-low", "bias-high"),
                    Set.of("dirty-head", "worn-head"));

    private Clashes() {}

    /** Whether two forms exclude each other, by the machine or because no mode shows both. */
    static boolean clash(FaultForm a, FaultForm b) {
        return a.code().equals(b.code())
                || TOGETHER.stream().anyMatch(s -> s.contains(a.code()) && s.contains(b.code()))
                || List.of("reference-tape", "two-pass", "off-tape").stream()
                        .noneMatch(m -> shows(a, m) && shows(b, m));
    }

    private static boolean shows(FaultForm form, String mode) {
        return FaultCatalogue.of(form.code()).showsIn(mode);
    }
}
