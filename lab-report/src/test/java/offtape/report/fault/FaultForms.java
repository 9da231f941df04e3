package offtape.report.fault;

import java.util.ArrayList;
import java.util.List;

/** All forms of all faults. How far each may go is common practice of workshops, no source. */
final class FaultForms {

    private FaultForms() {}

    static List<FaultForm> all() {
        List<FaultForm> all = new ArrayList<>();
        all.addAll(HeadFaults.ALL);
        all.addAll(RecordingFaults.ALL);
        all.addAll(MotionFaults.ALL);
        all.addAll(SignalFaults.ALL);
        return all;
    }

    /** Severity on a straight scale. */
    static double at(double severity, double least, double most) {
        return least + severity * (most - least);
    }

    /** Severity on a logarithmic scale. */
    static double size(double severity, double least, double most) {
        return least * Math.pow(most / least, severity);
    }
}
