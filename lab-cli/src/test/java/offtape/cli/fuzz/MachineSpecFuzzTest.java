package offtape.cli.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Timeout;

/** Descriptions of simulated machines. */
@Tag("fuzz")
@Timeout(20)
final class MachineSpecFuzzTest {

    private final HostileFile file = HostileFile.named("machine.json");

    @FuzzTest
    void anyBytes(byte[] bytes) {
        file.holding(bytes).read(path -> SimulatedMachine.of(MachineSpec.fromJson(path)));
    }
}
