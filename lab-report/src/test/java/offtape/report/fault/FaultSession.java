package offtape.report.fault;

import java.util.List;
import java.util.Map;
import offtape.report.fault.symptom.Reading;

/**
 * What was measured of one simulated machine.
 *
 * @param faults what it had been given; empty for a sound machine
 * @param severity of the first of them, 0 to 1
 * @param sound number of the sound machine it was before
 * @param mode key of the capture mode
 * @param mmPerS tape speed
 * @param readings its symptoms
 */
record FaultSession(
        List<Given> faults,
        double severity,
        int sound,
        String mode,
        double mmPerS,
        Map<String, Reading> readings) {

    /**
     * A fault that was given to a machine.
     *
     * @param side which channel has it: {@code both}, {@code right} or {@code left}
     */
    record Given(String code, String variant, String side) {}
}
