package offtape.report.result;

import java.util.List;
import java.util.function.Function;
import offtape.core.unit.Quantity;

/**
 * Readings of wow and flutter, percent, as {@link Speed} has them under the same names.
 *
 * @param weightedPeak weighted quasi-peak reading
 * @param weightedTwoSigma weighted value exceeded 4.55 % of the time
 * @param weightedRms weighted root mean square
 * @param unweightedPeak quasi-peak reading of 0.2 Hz to 200 Hz
 * @param unweightedRms root mean square of 0.2 Hz to 200 Hz
 * @param wowRms root mean square of 0.2 Hz to 6 Hz
 * @param flutterRms root mean square of 6 Hz to 200 Hz
 * @param americanRms root mean square of 0.5 Hz to 200 Hz
 */
public record PassFigures(
        Quantity weightedPeak,
        Quantity weightedTwoSigma,
        Quantity weightedRms,
        Quantity unweightedPeak,
        Quantity unweightedRms,
        Quantity wowRms,
        Quantity flutterRms,
        Quantity americanRms) {

    /** The readings of a tone. */
    public static PassFigures of(Speed speed) {
        return new PassFigures(
                speed.weightedPeak(),
                speed.weightedTwoSigma(),
                speed.weightedRms(),
                speed.unweightedPeak(),
                speed.unweightedRms(),
                speed.wowRms(),
                speed.flutterRms(),
                speed.americanRms());
    }

    /** One figure from those of the same name in several. */
    public static PassFigures of(List<PassFigures> all, Function<List<Quantity>, Quantity> one) {
        return new PassFigures(
                one.apply(all.stream().map(PassFigures::weightedPeak).toList()),
                one.apply(all.stream().map(PassFigures::weightedTwoSigma).toList()),
                one.apply(all.stream().map(PassFigures::weightedRms).toList()),
                one.apply(all.stream().map(PassFigures::unweightedPeak).toList()),
                one.apply(all.stream().map(PassFigures::unweightedRms).toList()),
                one.apply(all.stream().map(PassFigures::wowRms).toList()),
                one.apply(all.stream().map(PassFigures::flutterRms).toList()),
                one.apply(all.stream().map(PassFigures::americanRms).toList()));
    }
}
