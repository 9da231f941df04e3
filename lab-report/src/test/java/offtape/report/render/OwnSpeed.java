package offtape.report.render;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.unit.Quantity;
import offtape.report.result.RateBand;
import offtape.report.result.SpeedComponent;
import offtape.report.result.SpeedTrace;
import offtape.report.result.TransportSpectrum;
import offtape.report.result.TransportSpeed;

/** Invented figures of a transport itself, with heads 157 ms apart. */
final class OwnSpeed {

    private static final double DELAY_S = 0.157;

    private OwnSpeed() {}

    static TransportSpeed of(double[] seconds, double[] rates, double[] middle, double[] peaks) {
        return new TransportSpeed(
                Quantity.unknown("Recorded and replayed at the same moment, it cancels."),
                known(0.031),
                known(0.101),
                known(0.094),
                known(0.058),
                known(0.16),
                known(0.082),
                known(0.061),
                known(0.037),
                known(0.081),
                List.of(SpeedComponent.steady(9.6, 0.024, "capstan", 0.0003, 0.0009)),
                Quantity.known(157.02, "ms", 0.08),
                "The delay of the programme less the interface's own.",
                IntStream.range(0, 31)
                        .mapToObj(
                                k ->
                                        new RateBand(
                                                k / DELAY_S + 0.02 + 0.004 * k,
                                                (k + 1) / DELAY_S - 0.02 - 0.004 * k))
                        .toList(),
                0.012,
                "lines one by one, the rest by least squares",
                new SpeedTrace(
                        seconds,
                        DoubleStream.of(middle).map(m -> 0.6 * m - 0.03).toArray(),
                        DoubleStream.of(middle).map(m -> 0.6 * m + 0.03).toArray()),
                new TransportSpectrum(
                        rates,
                        DoubleStream.of(peaks).map(p -> 0.6 * p).toArray(),
                        IntStream.range(0, rates.length)
                                .mapToDouble(i -> 0.0002 + peaks[i] * doubt(rates[i]))
                                .toArray()),
                List.of("Changes slower than 0.020 Hz are not recovered."));
    }

    private static double doubt(double hz) {
        return 0.02 / (0.02 + Math.abs(Math.sin(Math.PI * hz * DELAY_S)));
    }

    private static Quantity known(double percent) {
        return Quantity.known(percent, "%", 0.03 * percent);
    }
}
