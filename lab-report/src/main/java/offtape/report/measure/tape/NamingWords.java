package offtape.report.measure.tape;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.core.fault.UnusableInputException;
import offtape.core.tape.ToneList;

/** What is to be said of the frequencies that tones were taken for. */
final class NamingWords {

    private static final int MOST_NAMED = 6;

    private NamingWords() {}

    static UnusableInputException misfit(
            List<HeardTone> heard, ListFit fit, ToneList list, String file) {
        int first =
                IntStream.range(0, heard.size())
                        .filter(i -> fit.entry()[i] < 0)
                        .findFirst()
                        .orElse(0);
        return new UnusableInputException(
                String.format(
                        Locale.ROOT,
                        "The tones in %s do not fit the list: %d of %d tones heard are among its"
                                + " %d, in this order. The first that does not fit has %.1f Hz, at"
                                + " %.1f s. Check the list, or leave it out.",
                        file,
                        fit.matched(),
                        heard.size(),
                        list.tones().size(),
                        heard.get(first).hz(),
                        heard.get(first).fromSeconds()));
    }

    static List<String> wrongSpeed(double factor) {
        if (factor > 0.7 && factor < 1.4) {
            return List.of();
        }
        return List.of(
                factor < 1
                        ? "The tones fit at half the speed: the tape was replayed at half the speed it"
                                + " was recorded at, or copied so. Levels and response are then not"
                                + " those of the right speed."
                        : "The tones fit at twice the speed: the tape was replayed at twice the speed"
                                + " it was recorded at, or copied so. Levels and response are then"
                                + " not those of the right speed.");
    }

    static String otherWays(List<SeriesFit> fits, double[] heard) {
        SeriesFit taken = fits.get(0);
        SeriesFit other = fits.get(1);
        int i =
                IntStream.range(0, heard.length)
                        .filter(k -> other.nominal()[k] > 0 && taken.nominal()[k] > 0)
                        .filter(k -> other.nominal()[k] != taken.nominal()[k])
                        .findFirst()
                        .orElse(0);
        return String.format(
                Locale.ROOT,
                "The tones fit in more than one way: %.1f Hz may be %s at %+.1f %% of speed or %s at"
                        + " %+.1f %%. The nearer one is shown; say with --speed-tone or --tones what"
                        + " the tape holds.",
                heard[i],
                hz(taken.nominal()[i]),
                100 * (taken.factor() - 1),
                hz(other.nominal()[i]),
                100 * (other.factor() - 1));
    }

    static List<String> strange(List<NamedTone> strange) {
        if (strange.isEmpty()) {
            return List.of();
        }
        List<String> which =
                strange.stream()
                        .map(
                                t ->
                                        String.format(
                                                Locale.ROOT,
                                                "%s at %.1f s",
                                                hz(t.heard().hz()),
                                                t.heard().fromSeconds()))
                        .toList();
        return List.of("Tones that do not belong to the list: " + some(which) + ".");
    }

    static String some(List<String> items) {
        return items.stream().limit(MOST_NAMED).collect(Collectors.joining(", "))
                + (items.size() > MOST_NAMED ? " and more" : "");
    }

    /** A frequency with one decimal where it has one. */
    static String hz(double hz) {
        return new BigDecimal(hz)
                        .setScale(1, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString()
                + " Hz";
    }
}
