package offtape.report.render;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import offtape.report.judge.Bounds;

/** What a set of limits draws into the charts of a session. */
final class LimitLines {

    /** K3 at which the record level is limited, percent. */
    private static final double K3_PERCENT = 3;

    /** Crosstalk is limited at 1 kHz, drawn as the third-octave band around it. */
    private static final double CROSSTALK_FROM_HZ = 891;

    private static final double CROSSTALK_TO_HZ = 1122;

    private final Wording words;
    private final List<Bounds> all;

    LimitLines(Wording words, List<Bounds> all) {
        this.words = words;
        this.all = List.copyOf(all);
    }

    /** The band of each limit of the response. */
    List<Chart.LimitLine> response(Axis db) {
        return named(Bounds.RESPONSE)
                .flatMap(b -> both(b, b.fromHz(), b.toHz(), words.say("response.limit")))
                .filter(l -> db.holds(l.y()[0]))
                .toList();
    }

    /** What is to be said of the lines in the chart of the response; nothing if there are none. */
    String responseWords(Axis db) {
        if (response(db).isEmpty()) {
            return "";
        }
        boolean isPlaced = named(Bounds.RESPONSE).anyMatch(Bounds::isPlaced);
        return " "
                + words.say("response.limits-reading")
                + (isPlaced ? " " + words.say("response.limits-placed") : "");
    }

    /** The highest weighted peak that meets every limit, percent, if there is a limit. */
    OptionalDouble highestWow() {
        return highest(Bounds.WOW_AND_FLUTTER);
    }

    /** The highest crosstalk at 1 kHz that meets every limit, dB, if there is a limit. */
    OptionalDouble highestCrosstalk() {
        return highest(Bounds.CROSSTALK);
    }

    private OptionalDouble highest(String quantity) {
        return named(quantity).filter(b -> b.high() != null).mapToDouble(Bounds::high).min();
    }

    /** That limit across the whole chart. */
    List<Chart.LimitLine> wowAndFlutter(Axis time, Axis percent) {
        return highestWow().stream()
                .filter(percent::holds)
                .mapToObj(
                        high ->
                                level(
                                        high,
                                        time.min(),
                                        time.max(),
                                        true,
                                        words.say(
                                                "response.limit-of",
                                                Numbers.withUnit(words.significant(high, 3), "%"))))
                .toList();
    }

    /** The corner that K3 must keep out of: over 3 % below the level that is asked for. */
    List<Chart.LimitLine> k3(Axis level, Axis k3) {
        return named(Bounds.LEVEL_AT_3_PERCENT)
                .filter(b -> b.low() != null && level.holds(b.low()))
                .map(
                        b ->
                                new Chart.LimitLine(
                                        new double[] {level.min(), b.low(), b.low()},
                                        new double[] {K3_PERCENT, K3_PERCENT, k3.max()},
                                        true,
                                        words.say("response.limit")))
                .toList();
    }

    /** The highest crosstalk at 1 kHz. */
    List<Chart.LimitLine> crosstalk(Axis db) {
        return named(Bounds.CROSSTALK)
                .flatMap(
                        b ->
                                both(
                                        b,
                                        CROSSTALK_FROM_HZ,
                                        CROSSTALK_TO_HZ,
                                        words.say("response.limit")))
                .filter(l -> db.holds(l.y()[0]))
                .toList();
    }

    /** The delays either way, as far as the chart reaches. */
    List<Chart.LimitLine> delay(Axis time, Axis us) {
        return named(Bounds.INTERCHANNEL_DELAY)
                .flatMap(b -> both(b, time.min(), time.max(), words.say("response.limit")))
                .filter(l -> us.holds(l.y()[0]))
                .toList();
    }

    private Stream<Bounds> named(String quantity) {
        return all.stream().filter(b -> b.quantity().equals(quantity));
    }

    private static Stream<Chart.LimitLine> both(Bounds b, double from, double to, String label) {
        List<Chart.LimitLine> lines = new ArrayList<>();
        if (b.high() != null) {
            lines.add(level(b.high(), from, to, true, label));
        }
        if (b.low() != null) {
            lines.add(level(b.low(), from, to, false, b.high() == null ? label : ""));
        }
        return lines.stream();
    }

    private static Chart.LimitLine level(
            double y, double from, double to, boolean isUpper, String label) {
        return new Chart.LimitLine(new double[] {from, to}, new double[] {y, y}, isUpper, label);
    }
}
