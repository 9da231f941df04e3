package offtape.report.render;

import java.util.List;
import java.util.stream.Stream;

/** What a capture mode cannot show, whatever the recording, in plain sentences. */
final class ModeWords {

    private ModeWords() {}

    /** Paragraphs on the mode of that name, as it stands in results. */
    static List<String> of(Wording words, String mode) {
        return Stream.of(keys(mode)).map(words::say).toList();
    }

    private static String[] keys(String mode) {
        return switch (mode == null ? "" : mode) {
            case "reference-tape" ->
                    new String[] {"session.reference-tape-brings", "session.reference-tape-record"};
            case "two-pass" -> new String[] {"session.two-pass-speed", "session.two-pass-response"};
            case "off-tape" ->
                    new String[] {
                        "session.off-tape-speed",
                        "session.off-tape-mean",
                        "session.off-tape-response"
                    };
            case "loopback" -> new String[] {"session.loopback-only"};
            default -> new String[] {"session.mode-not-known"};
        };
    }
}
