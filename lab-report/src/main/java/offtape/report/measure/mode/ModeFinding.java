package offtape.report.measure.mode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.result.HealthNote;

/**
 * The capture mode that was said, or that the recording shows, or that somebody answered.
 *
 * @param mode the mode, or null if it is not known
 * @param notes what the reader should know of it
 */
record ModeFinding(CaptureMode mode, List<HealthNote> notes) {

    private static final Sentences SAID = Sentences.near(ModeFinding.class);

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
        boolean together = mode == CaptureMode.OFF_TAPE || mode == CaptureMode.LOOPBACK;
        if (together && !signs.isRateOfClocks()) {
            return Optional.of(checked(SAID.say("not-together", signs.rateText(), mode.key())));
        }
        if (mode == CaptureMode.LOOPBACK && !signs.steady()) {
            return Optional.of(checked(SAID.say("not-steady")));
        }
        if (!together && signs.twoHeads()) {
            return Optional.of(checked(SAID.say("two-heads", signs.delayText())));
        }
        if (mode == CaptureMode.TWO_PASS && !signs.isRateOfOneMachine()) {
            return Optional.of(checked(SAID.say("not-one-machine", signs.rateText())));
        }
        return Optional.empty();
    }

    private static String checked(String contradiction) {
        return contradiction + " " + SAID.say("check");
    }

    private static ModeFinding inferred(ModeSigns signs, Capture capture) {
        if (capture.replays() > 1) {
            return replayed(signs);
        }
        List<CaptureMode> possible = possible(signs);
        if (possible.size() == 1) {
            String text =
                    SAID.say("inferred", possible.get(0).key(), reason(possible.get(0), signs));
            return new ModeFinding(
                    possible.get(0), List.of(new HealthNote("note", "mode-inferred", text)));
        }
        String why = SAID.say("signs", signs.rateText(), signs.delayText());
        Optional<CaptureMode> answer = capture.question().ask(possible, why);
        if (answer.isPresent()) {
            return new ModeFinding(answer.get(), List.of());
        }
        String text =
                SAID.say(
                        "not-said",
                        signs.rateText(),
                        signs.delayText(),
                        possible.stream()
                                .map(m -> "--mode " + m.key())
                                .collect(Collectors.joining(", ")));
        return new ModeFinding(null, List.of(new HealthNote("warning", "mode-not-said", text)));
    }

    /** Off tape there is one moment and one return, so several returns are replays. */
    private static ModeFinding replayed(ModeSigns signs) {
        CaptureMode mode =
                signs.isRateOfOneMachine() ? CaptureMode.TWO_PASS : CaptureMode.REFERENCE_TAPE;
        String text =
                mode == CaptureMode.TWO_PASS
                        ? SAID.say("replays-two-pass")
                        : SAID.say("replays", mode.key(), reason(mode, signs));
        return new ModeFinding(mode, List.of(new HealthNote("note", "mode-inferred", text)));
    }

    private static String reason(CaptureMode mode, ModeSigns signs) {
        return switch (mode) {
            case REFERENCE_TAPE -> SAID.say("reason-reference-tape", signs.rateText());
            case LOOPBACK -> SAID.say("reason-loopback", signs.delayText());
            case OFF_TAPE -> SAID.say("reason-off-tape", signs.delayText());
            case TWO_PASS -> SAID.say("reason-two-pass");
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
