package offtape.report.measure.speed;

import java.util.List;
import offtape.core.standard.Iec60386;

/** How detectors at both ends of what the standard allows read a deviation. */
final class OtherDetectors {

    private final List<PeakReading> readings;

    OtherDetectors(Iec60386 meter) {
        readings =
                List.of(
                        PeakReading.other(meter, meter.slowestQuasiPeak()),
                        PeakReading.other(meter, meter.quickestQuasiPeak()));
    }

    void next(double[] filtered) {
        readings.forEach(r -> r.next(filtered));
    }

    void end() {
        readings.forEach(PeakReading::end);
    }

    /** By how much the farther one differs from a highest reading, a share of it. */
    double apart(double highest) {
        return highest > 0
                ? readings.stream()
                        .mapToDouble(r -> Math.abs(r.highest() / highest - 1))
                        .max()
                        .orElseThrow()
                : 0;
    }
}
