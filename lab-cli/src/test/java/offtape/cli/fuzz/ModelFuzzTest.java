package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.util.Arrays;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.report.apply.model.MachineModel;
import offtape.report.apply.model.ModelFit;
import offtape.report.apply.model.ModelSound;
import offtape.report.result.Results;
import offtape.report.result.ResultsReader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Results of a session, by which a model of the machine is made and sound passed through it. */
@Tag("fuzz")
@Timeout(20)
final class ModelFuzzTest {

    private static final int RATE_HZ = 8000;

    /** Filters are designed in tables of the same size for any session, bytes. */
    private static final long MEMORY = 256L << 20;

    private final HostileFile file = HostileFile.computed(Results.FILE, MEMORY);

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes)
                .read(ResultsReader::read)
                .flatMap(results -> file.attempt(() -> ModelFit.of(results)))
                .ifPresent(ModelFuzzTest::play);
    }

    private static void play(MachineModel model) {
        double[] tone = new double[RATE_HZ / 8];
        Arrays.setAll(tone, i -> 0.1 * Math.sin(0.8 * i));
        AudioSource sound = new MemoryAudio("tone", RATE_HZ, tone, tone);
        try (AudioSource made = ModelSound.of(model, sound, 0, model.known(), 1)) {
            for (double[] channel : made.read(0, (int) made.frames())) {
                assertTrue(Arrays.stream(channel).allMatch(Double::isFinite), "not finite");
            }
        }
    }
}
