package offtape.report.fault;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Learns the signatures of faults anew and writes them below {@code target}, to be looked at and
 * then copied to reference-data. Runs with {@code -Pfault-studies}.
 */
class SignatureLearningTest {

    private static final int SOUND = 110;
    private static final int EACH = 7;
    private static final long SEED = 45_507;

    @TempDir private static Path folder;

    @Test
    @Tag("fault-study")
    void learnsSignatures() throws IOException {
        FaultSessions sessions = new FaultSessions(folder);
        List<FaultSession> sound =
                SessionStore.of("learning-sound", () -> sessions.sound(0, SOUND, SEED));
        List<FaultSession> faulty = new ArrayList<>();
        for (FaultForm form : FaultForms.all()) {
            faulty.addAll(
                    SessionStore.of(
                            "learning-" + form.name(),
                            () -> sessions.learning(form, EACH, SOUND, SEED)));
        }
        String made =
                SOUND
                        + " sound machines and "
                        + EACH
                        + " of each form of fault, simulated and measured; seed "
                        + SEED
                        + ".";
        Path file = Path.of("target", "signatures.json");
        Files.writeString(file, new Learner(sound, faulty).signatures(made).json());
    }
}
