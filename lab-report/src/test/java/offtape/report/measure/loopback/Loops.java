package offtape.report.measure.loopback;

import java.util.List;
import offtape.core.unit.Quantity;
import offtape.report.result.HumLine;
import offtape.report.result.InterfaceFigures;

/** Interfaces for tests, made by hand. */
final class Loops {

    static final Quantity NO = Quantity.unknown("This was not measured.");

    private Loops() {}

    static Quantity db(double value, double uncertainty) {
        return Quantity.known(value, "dB", uncertainty);
    }

    /** A channel of an interface that returns the reference tone at −18 dBFS. */
    static InterfaceFigures.Channel channel(
            Quantity noise,
            InterfaceFigures.Curve curve,
            InterfaceFigures.Density density,
            List<HumLine> hum,
            InterfaceFigures.Ladder... ladders) {
        return new InterfaceFigures.Channel(
                "left",
                -18.0,
                Quantity.known(10, "ms", 0.001),
                curve,
                noise,
                noise,
                noise,
                density,
                hum,
                List.of(ladders),
                List.of());
    }

    static InterfaceFigures.Channel withNoise(Quantity noise) {
        return channel(noise, null, null, List.of());
    }
}
