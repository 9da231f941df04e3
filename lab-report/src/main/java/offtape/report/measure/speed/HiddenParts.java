package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import offtape.core.text.Sentences;
import offtape.core.transport.ExpectedLine;
import offtape.core.transport.ExpectedLines;
import offtape.core.transport.TransportDescription;
import offtape.report.result.TransportSpeed;

/**
 * Parts that turn at a rate which both heads hear alike: a return off tape does not show whether
 * they run true.
 */
final class HiddenParts {

    private static final Sentences SAID = Sentences.near(HiddenParts.class);

    private final List<ExpectedLine> expected;

    HiddenParts(TransportDescription transport, Double sessionMmPerS) {
        Double nominal = sessionMmPerS == null ? transport.tapeSpeedMmPerS() : sessionMmPerS;
        this.expected =
                ExpectedLines.of(
                        transport,
                        nominal == null ? OptionalDouble.empty() : OptionalDouble.of(nominal),
                        0);
    }

    /** The notes of a transport's speed with one more for each part whose line may be hidden. */
    List<String> notes(TransportSpeed own) {
        List<String> notes = new ArrayList<>(own.notes());
        if (!own.recoveredBands().isEmpty()) {
            double top = own.recoveredBands().get(own.recoveredBands().size() - 1).toHz();
            for (ExpectedLine line : expected) {
                if (line.highHz() < top && mayBeHidden(line, own)) {
                    notes.add(
                            SAID.say(
                                    "hidden-part",
                                    capital(line.part()),
                                    line.lowHz(),
                                    line.highHz()));
                }
            }
        }
        return notes;
    }

    private static boolean mayBeHidden(ExpectedLine line, TransportSpeed own) {
        return own.recoveredBands().stream()
                .noneMatch(b -> b.fromHz() <= line.lowHz() && b.toHz() >= line.highHz());
    }

    private static String capital(String part) {
        return part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1);
    }
}
