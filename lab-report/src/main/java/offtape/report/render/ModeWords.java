package offtape.report.render;

import java.util.List;

/** What a capture mode cannot show, whatever the recording, in plain sentences. */
final class ModeWords {

    private ModeWords() {}

    /** Sentences on the mode of that name, as it stands in results. */
    static List<String> of(String mode) {
        return switch (mode == null ? "" : mode) {
            case "reference-tape" ->
                    List.of(
                            "The tape was recorded elsewhere. What it brings with it counts as"
                                    + " this machine's: its own wow and flutter, level, response and"
                                    + " noise, and an error of the clock of the recording interface.",
                            "The record side of this machine had no part in it: record head, bias,"
                                    + " erasure and record amplifier are not tested.");
            case "two-pass" ->
                    List.of(
                            "One machine wrote and read the tape. A speed that is always wrong"
                                    + " cancels and cannot be seen; wow and flutter of both passes"
                                    + " add up, and how they meet is chance. A single replay may"
                                    + " read anything from their difference to their sum; replay the"
                                    + " recording several times and measure the replays together.",
                            "Response and distortion are those of record and replay together. An"
                                    + " azimuth that is wrong on a head which does both is not seen.");
            case "off-tape" ->
                    List.of(
                            "Both heads touch one moving tape, a fraction of a second apart. What"
                                    + " changes slowly is written and read alike and leaves nothing to"
                                    + " hear; what changes so fast that the tape between the heads"
                                    + " holds half a period comes back doubled, and at a whole period"
                                    + " it vanishes. The readings as heard are true for music sent"
                                    + " through the machine. As figures of its transport they may be"
                                    + " anything from twice too high to nothing at all.",
                            "Mean speed and slow drift cancel. A rate of the return that is not the"
                                    + " programme's is no speed of tape but two sample clocks that"
                                    + " differ.",
                            "Response and distortion are those of record and replay together.");
            case "loopback" ->
                    List.of(
                            "No tape was in the way. All figures are those of the interface and its"
                                    + " cables: the floor under every measurement made with it.");
            default ->
                    List.of(
                            "How the recording was made is not known, so whatever hangs on that was"
                                    + " left out.");
        };
    }
}
