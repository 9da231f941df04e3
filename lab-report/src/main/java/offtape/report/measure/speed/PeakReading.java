package offtape.report.measure.speed;

import java.util.function.Consumer;
import offtape.core.standard.Iec60386;
import offtape.core.standard.RunningFilter;
import offtape.core.standard.Settled;

/** The quasi-peak reading of a band where it has settled. */
final class PeakReading {

    private final RunningFilter detector;
    private final Settled settled;
    private final Consumer<double[]> also;
    private double highest;

    PeakReading(Iec60386 meter) {
        this(meter, x -> {});
    }

    /** As above; the settled reading over time goes to another reader too. */
    PeakReading(Iec60386 meter, Consumer<double[]> also) {
        this(meter, meter.quasiPeak(), also);
    }

    private PeakReading(Iec60386 meter, RunningFilter detector, Consumer<double[]> also) {
        this.detector = detector;
        this.settled = meter.settled();
        this.also = also;
    }

    /** As another detector reads it that keeps to the standard. */
    static PeakReading other(Iec60386 meter, RunningFilter detector) {
        return new PeakReading(meter, detector, x -> {});
    }

    void next(double[] filtered) {
        take(detector.next(filtered));
    }

    void end() {
        take(detector.rest());
    }

    private void take(double[] reading) {
        double[] part = settled.next(reading);
        for (double v : part) {
            highest = Math.max(highest, v);
        }
        also.accept(part);
    }

    /** The highest reading, 0 if nothing has settled. */
    double highest() {
        return highest;
    }
}
