package offtape.report.fault;

import java.util.List;

/**
 * What is known of one fault.
 *
 * @param code short stable name
 * @param name what the trade calls it
 * @param channels {@code one-or-both}, or {@code machine} if it is no matter of one channel
 * @param modes capture modes that can show it on a machine, by key
 * @param moves quantities of a limit that it worsens, as a set of limits names them; empty if it
 *     worsens none that a limit can be set for
 * @param signature what it does to the figures
 * @param source where that is from; "common practice, no source" where there is none
 * @param unlike what looks like it, and how it is told from that
 * @param first the first cheap thing to try
 * @param repair what a service does about it
 * @param effort {@code clean} (minutes, no parts), {@code adjust} (bench time, no parts), {@code
 *     replace} (parts), or {@code outside} (nothing is wrong with the machine)
 * @param gain what the repair should bring
 * @param confirm what to measure to be sure of it
 * @param cautions keys of {@link Caution}s that the first try or the repair needs
 */
public record FaultNote(
        String code,
        String name,
        String channels,
        List<String> modes,
        List<String> moves,
        String signature,
        String source,
        List<LookAlike> unlike,
        String first,
        String repair,
        String effort,
        String gain,
        String confirm,
        List<String> cautions) {

    /** Copies the lists so that the record cannot change. */
    public FaultNote {
        modes = List.copyOf(modes);
        moves = moves == null ? List.of() : List.copyOf(moves);
        unlike = List.copyOf(unlike);
        cautions = List.copyOf(cautions);
    }

    /**
     * Another fault that looks like it.
     *
     * @param code of the other fault
     * @param words how they are told apart
     */
    public record LookAlike(String code, String words) {}

    /** Whether a capture mode can show it; one that is not known may be any. */
    public boolean showsIn(String mode) {
        return mode == null || modes.contains(mode);
    }
}
