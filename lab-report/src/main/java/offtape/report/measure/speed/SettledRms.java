package offtape.report.measure.speed;

import java.util.function.Consumer;
import offtape.core.standard.Iec60386;
import offtape.core.standard.Settled;

/** Root mean square of a band where it has settled. */
final class SettledRms {

    private final Settled settled;
    private final Consumer<double[]> also;
    private double squares;
    private long count;

    SettledRms(Iec60386 meter) {
        this(meter, x -> {});
    }

    /** As above; what has settled goes to another reader too. */
    SettledRms(Iec60386 meter, Consumer<double[]> also) {
        this.settled = meter.settled();
        this.also = also;
    }

    void next(double[] filtered) {
        double[] part = settled.next(filtered);
        for (double v : part) {
            squares += v * v;
        }
        count += part.length;
        also.accept(part);
    }

    /** The figure, 0 if nothing has settled. */
    double value() {
        return count == 0 ? 0 : Math.sqrt(squares / count);
    }
}
