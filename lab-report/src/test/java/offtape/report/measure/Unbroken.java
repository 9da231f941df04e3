package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.report.result.HealthNote;

/** No simulated machine loses or adds sound, whatever its wow, drift, hiss and dropouts. */
final class Unbroken {

    private Unbroken() {}

    /** Fails if a machine is said to have done so. */
    static MeasuredMachine required(MeasuredMachine measured) {
        List<HealthNote> jumps =
                measured.results().health().stream().filter(n -> n.code().equals("xrun")).toList();
        assertEquals(List.of(), jumps, measured.machine().name());
        return measured;
    }
}
