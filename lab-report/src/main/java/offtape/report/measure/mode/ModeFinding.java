package offtape.report.measure.mode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import offtape.core.transport.CaptureMode;
import offtape.report.result.HealthNote;

/**
 * The capture mode that was said, or that the recording shows, or that somebody answered.
 *
 * @param mode the mode, or null if it is not known
 * @param notes what the reader should know of it
 */
record ModeFinding(CaptureMode mode, List<HealthNote> notes) {

    static ModeFinding of(ModeSigns signs, Capture capture) {
        return capture.mode() == null ? inferred(signs, capture) : said(signs, capture.mode());
    }

    private static ModeFinding said(ModeSigns signs, CaptureMode mode) {
        return contradiction(signs, mode)
                .map(
                        text ->
                                new ModeFinding(
                                        mode,
                                        List.of(
                                                new HealthNote(
                                                        "warning", "mode-contradicted", text))))
                .orElseGet(() -> new ModeFinding(mode, List.of()));
    }

    private static Optional<String> contradiction(ModeSigns signs, CaptureMode mode) {
        String check = " Check what was said with --mode.";
        boolean together = mode == CaptureMode.OFF_TAPE || mode == CaptureMode.LOOPBACK;
        if (together && !signs.isRateOfClocks()) {
            return Optional.of(
                    "The whole return runs "
                            + signs.rateText()
                            + " off, more than two sample clocks differ: it can hardly be "
                            + mode.key()
                            + ", where recording and replay are one moment."
                            + check);
        }
        if (mode == CaptureMode.LOOPBACK && !signs.steady()) {
            return Optional.of(
                    "The speed tone wavers as on tape: this is no loopback of the interface alone."
                            + check);
        }
        if (!together && signs.twoHeads()) {
            return Optional.of(
                    "The wavering of the return lacks the rates that two heads on one moving tape hear"
                            + " alike, and it begins at "
                            + signs.delayText()
                            + ": it looks like off-tape, recorded and replayed at the same moment."
                            + check);
        }
        if (mode == CaptureMode.TWO_PASS && !signs.isRateOfOneMachine()) {
            return Optional.of(
                    "The whole return runs "
                            + signs.rateText()
                            + " off: one machine that recorded and replayed the tape differs less"
                            + " between its passes, unless it slips or the speed was set"
                            + " otherwise."
                            + check);
        }
        return Optional.empty();
    }

    private static ModeFinding inferred(ModeSigns signs, Capture capture) {
        if (capture.replays() > 1) {
            return replayed(signs);
        }
        List<CaptureMode> possible = possible(signs);
        String why =
                "The return runs " + signs.rateText() + " off and begins at " + signs.delayText();
        if (possible.size() == 1) {
            String text =
                    "The capture mode was not said and taken for "
                            + possible.get(0).key()
                            + " from the recording ("
                            + reason(possible.get(0), signs)
                            + "). If it is another one, say so with --mode.";
            return new ModeFinding(
                    possible.get(0), List.of(new HealthNote("note", "mode-inferred", text)));
        }
        Optional<CaptureMode> answer = capture.question().ask(possible, why + ".");
        if (answer.isPresent()) {
            return new ModeFinding(answer.get(), List.of());
        }
        String text =
                "How the recording was made was not said, and the recording does not show it: "
                        + why.substring(0, 1).toLowerCase(Locale.ROOT)
                        + why.substring(1)
                        + ". Mean speed, clock and delay of the heads are left out. Measure again with"
                        + " one of "
                        + possible.stream()
                                .map(m -> "--mode " + m.key())
                                .collect(Collectors.joining(", "))
                        + ".";
        return new ModeFinding(null, List.of(new HealthNote("warning", "mode-not-said", text)));
    }

    /** Off tape there is one moment and one return, so several returns are replays. */
    private static ModeFinding replayed(ModeSigns signs) {
        CaptureMode mode =
                signs.isRateOfOneMachine() ? CaptureMode.TWO_PASS : CaptureMode.REFERENCE_TAPE;
        String text =
                "Several returns were given, so they are taken for replays of one tape, and the capture"
                        + " mode for "
                        + mode.key()
                        + (mode == CaptureMode.TWO_PASS
                                ? " (recorded on this machine). If the tape was recorded elsewhere,"
                                        + " say so with --mode reference-tape."
                                : " ("
                                        + reason(mode, signs)
                                        + "). If it is another one, say so with --mode.");
        return new ModeFinding(mode, List.of(new HealthNote("note", "mode-inferred", text)));
    }

    private static String reason(CaptureMode mode, ModeSigns signs) {
        return switch (mode) {
            case REFERENCE_TAPE ->
                    "it runs "
                            + signs.rateText()
                            + " off, more than one machine differs between two passes";
            case LOOPBACK ->
                    "it does not waver, its rate is that of the programme, and it begins at "
                            + signs.delayText();
            case OFF_TAPE ->
                    "its wavering lacks the rates that two heads on one tape hear alike, and it begins"
                            + " at "
                            + signs.delayText();
            case TWO_PASS -> "several replays were given";
        };
    }

    private static List<CaptureMode> possible(ModeSigns signs) {
        List<CaptureMode> modes = new ArrayList<>();
        boolean clocks = signs.isRateOfClocks();
        if (clocks && signs.steady() && !signs.saturates() && signs.isDelayOfLoop()) {
            return List.of(CaptureMode.LOOPBACK);
        }
        if (signs.twoHeads()) {
            return List.of(CaptureMode.OFF_TAPE);
        }
        if (clocks && !signs.steady() && signs.isDelayOfHeads()) {
            modes.add(CaptureMode.OFF_TAPE);
        }
        if (signs.isRateOfOneMachine()) {
            modes.add(CaptureMode.TWO_PASS);
        }
        modes.add(CaptureMode.REFERENCE_TAPE);
        if (clocks && signs.steady()) {
            modes.add(CaptureMode.LOOPBACK);
        }
        return modes;
    }
}
