package offtape.report.measure.tape;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.core.fault.UnusableInputException;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import offtape.core.text.Sentences;

/** What is to be said of the frequencies that tones were taken for. */
final class NamingWords {

    private static final Sentences SAID = Sentences.near(NamingWords.class);

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
                SAID.say(
                        "misfit",
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
        return List.of(SAID.say(factor < 1 ? "fits-at-half" : "fits-at-twice"));
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
        return SAID.say(
                "other-ways",
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
                                        SAID.say(
                                                "strange-tone",
                                                number(t.heard().hz()),
                                                t.heard().fromSeconds()))
                        .toList();
        return List.of(SAID.say(isLong(which) ? "strange-more" : "strange", some(which)));
    }

    /** Nothing heard is near the frequency that the tone for speed should have. */
    static UnusableInputException noSpeedTone(
            List<HeardTone> heard, double nominalHz, String file) {
        List<String> all = heard.stream().map(t -> hz(t.hz())).distinct().toList();
        return new UnusableInputException(
                SAID.say(
                        isLong(all) ? "no-speed-tone-more" : "no-speed-tone",
                        hz(nominalHz),
                        file,
                        some(all)));
    }

    /** The tone that is named for speed is not in the list of the tape, or not in the recording. */
    static UnusableInputException noSpeedToneOf(ToneList list, double nominalHz, String file) {
        List<Double> listed = list.tones().stream().map(ListedTone::frequencyHz).toList();
        if (listed.stream().anyMatch(f -> NamedTone.isSame(f, nominalHz))) {
            return new UnusableInputException(SAID.say("listed-not-heard", hz(nominalHz), file));
        }
        List<String> all = listed.stream().map(NamingWords::hz).distinct().toList();
        return new UnusableInputException(
                SAID.say(
                        isLong(all) ? "speed-tone-not-listed-more" : "speed-tone-not-listed",
                        hz(nominalHz),
                        some(all)));
    }

    private static boolean isLong(List<String> items) {
        return items.size() > MOST_NAMED;
    }

    private static String some(List<String> items) {
        return items.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
    }

    /** A frequency with one decimal where it has one. */
    static String hz(double hz) {
        return number(hz) + " Hz";
    }

    private static String number(double hz) {
        return new BigDecimal(hz)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }
}
