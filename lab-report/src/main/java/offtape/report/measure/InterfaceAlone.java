package offtape.report.measure;

import java.util.List;
import java.util.Set;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.DropoutSummary;
import offtape.report.result.HealthNote;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.Results;

/** The results of a loopback: the same figures as of a machine, but what only tape can have. */
final class InterfaceAlone {

    private static final Sentences SAID = Sentences.near(InterfaceAlone.class);

    private static final String NO_TAPE = SAID.say("no-tape");

    /** What these say is of tape. */
    private static final Set<String> OF_TAPE =
            Set.of("distortion-not-of-tape", "distortion-abrupt", "drift");

    private InterfaceAlone() {}

    /** The results, with what later sessions need of the interface. */
    static Results of(Results heard, InterfaceFigures figures) {
        Quantity none = Quantity.unknown(NO_TAPE);
        List<HealthNote> health =
                heard.health().stream().filter(n -> !OF_TAPE.contains(n.code())).toList();
        return new Results(
                heard.format(),
                heard.version(),
                heard.session(),
                heard.timing(),
                heard.speed(),
                heard.response(),
                heard.distortion(),
                heard.noise(),
                heard.channels().withoutAzimuth(NO_TAPE),
                List.of(),
                health,
                heard.verdict(),
                new DropoutSummary(0, none, none, none),
                figures,
                null,
                List.of());
    }
}
