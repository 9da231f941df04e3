package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.result.Results;

/** What a user should know of a model: what it lacks, and what of it is not the machine's. */
final class ModelNotes {

    private static final Sentences SAID = Sentences.near(ModelNotes.class);

    private final Results results;
    private final Set<ModelPart> known;
    private final boolean phaseTold;

    /**
     * @param known parts of which something is known
     * @param phaseTold whether harmonics told the phase of the highs
     */
    ModelNotes(Results results, Set<ModelPart> known, boolean phaseTold) {
        this.results = results;
        this.known = known;
        this.phaseTold = phaseTold;
    }

    List<String> all() {
        List<String> notes = new ArrayList<>();
        for (ModelPart part : ModelPart.values()) {
            if (!known.contains(part)) {
                notes.add(lacking(part));
            }
        }
        if (known.contains(ModelPart.RESPONSE) && !phaseTold) {
            notes.add(SAID.say("phase-guessed"));
        }
        if (results.session().referenceDbfs() == null) {
            notes.add(SAID.say("no-reference"));
        }
        mode(notes);
        return notes;
    }

    private static String lacking(ModelPart part) {
        return SAID.say(
                switch (part) {
                    case RESPONSE -> "no-response";
                    case CROSSTALK -> "no-crosstalk";
                    case SATURATION -> "no-saturation";
                    case NOISE -> "no-noise";
                    case MOTION -> "no-motion";
                });
    }

    private void mode(List<String> notes) {
        String mode = results.session().mode();
        if (CaptureMode.LOOPBACK.key().equals(mode)) {
            notes.add(SAID.say("loopback"));
        }
        if (CaptureMode.REFERENCE_TAPE.key().equals(mode)) {
            notes.add(SAID.say("reference-tape"));
        }
    }
}
