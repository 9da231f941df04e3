package offtape.cli.fuzz;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.util.Arrays;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Tables of a transport's motion, with which a simulated machine plays a tenth of a second. */
@Tag("fuzz")
@Timeout(20)
final class MotionTableFuzzTest {

    private static final int RATE_HZ = 8000;
    private static final int FRAMES = 800;

    private final HostileFile file = HostileFile.named("motion.csv");
    private final MachineSpec spec = movedBy(file.path());

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).attempt(() -> run(spec)).ifPresent(MotionTableFuzzTest::check);
    }

    /** A machine with nothing but the motion of a table. */
    static MachineSpec movedBy(Path table) {
        return MachineSpec.fromJson(
                "{\"format\": \"offtape-machine\", \"version\": 1, \"transport\": {\"motion\":"
                        + " {\"csv\": \""
                        + table.toString().replace("\\", "\\\\")
                        + "\"}}, \"recorder\": {\"tailSeconds\": 0}}");
    }

    /** The machine with a programme of a tenth of a second on it. */
    static MachineRun run(MachineSpec spec) {
        return SimulatedMachine.of(spec).run(RATE_HZ, FRAMES, -18, RATE_HZ);
    }

    /** Time goes on, speed stays within half of nominal, and what comes back is sound. */
    private static void check(MachineRun run) {
        assertTrue(run.frames() < 4 * FRAMES + RATE_HZ, () -> run.frames() + " frames");
        double before = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < run.frames(); i++) {
            double now = run.timeMap().programmeSeconds((double) i / RATE_HZ);
            assertTrue(now > before && Double.isFinite(now), "time stands still");
            before = now;
        }
        double[] tone = new double[FRAMES];
        Arrays.setAll(tone, i -> 0.1 * Math.sin(0.8 * i));
        run.play(
                new MemoryAudio("tone", RATE_HZ, tone),
                (block, count) -> {
                    for (double[] channel : block) {
                        boolean finite =
                                Arrays.stream(channel, 0, count).allMatch(Double::isFinite);
                        assertTrue(finite, "not finite");
                    }
                });
    }
}
