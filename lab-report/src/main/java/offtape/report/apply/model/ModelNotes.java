package offtape.report.apply.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import offtape.core.transport.CaptureMode;
import offtape.report.result.Results;

/** What a user should know of a model: what it lacks, and what of it is not the machine's. */
final class ModelNotes {

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
            notes.add(
                    "The phase of the highs is a guess: the session holds no harmonics that tell it"
                            + " (a clean path, or measured by an earlier release).");
        }
        if (results.session().referenceDbfs() == null) {
            notes.add(
                    "The session does not say its programme's reference level: −18 dBFS is taken."
                            + " Measure the return again for the true one.");
        }
        mode(notes);
        return notes;
    }

    private static String lacking(ModelPart part) {
        return switch (part) {
            case RESPONSE -> "The session tells no response: the sound keeps its own.";
            case CROSSTALK -> "The session tells no crosstalk: the channels stay apart.";
            case SATURATION ->
                    "The session tells no distortion over level that stands out: nothing saturates.";
            case NOISE -> "The session tells no noise spectrum: no noise is added.";
            case MOTION -> "The session tells no wow and flutter: nothing wavers.";
        };
    }

    private void mode(List<String> notes) {
        String mode = results.session().mode();
        if (CaptureMode.LOOPBACK.key().equals(mode)) {
            notes.add("The session is a loopback: what is heard is the interface, not a machine.");
        }
        if (CaptureMode.REFERENCE_TAPE.key().equals(mode)) {
            notes.add(
                    "The session replayed a tape recorded elsewhere: response and distortion are"
                            + " those of the machine that wrote it as well.");
        }
    }
}
