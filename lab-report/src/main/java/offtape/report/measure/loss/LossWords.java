package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.ContourPoint;
import offtape.report.result.LossCause;
import offtape.report.result.Response;
import offtape.report.result.Session;

/** What the losses are, how sure that is and what looks alike, in plain sentences. */
final class LossWords {

    private static final Sentences SAID = Sentences.near(LossWords.class);

    private static final double REFERENCE_HZ = 1000;
    private static final double HIGH_HZ = 10_000;

    /** A loss begins where a cause takes this much. */
    private static final double BEGINS_DB = 0.3;

    /** So much unevenness makes every cause doubtful. */
    private static final double UNEVEN_DB = 0.15;

    private static final int MOST_CHOICES = 3;

    /** The unit in which an angle is told. */
    private static final String ANGLE = "arc min";

    private final Weighing weighing;
    private final List<SetFit> simplest;
    private final Response response;
    private final Session session;

    LossWords(Weighing weighing, List<SetFit> simplest, Response response, Session session) {
        this.weighing = weighing;
        this.simplest = simplest;
        this.response = response;
        this.session = session;
    }

    List<String> sentences(List<LossCause> causes) {
        List<String> words = new ArrayList<>();
        words.add(ofWhat());
        causes.stream().filter(c -> c.quantity().isKnown()).forEach(c -> words.add(told(c)));
        if (simplest.get(0).set().causes().isEmpty()) {
            words.add(SAID.say("none"));
        } else if (simplest.size() > 1) {
            words.add(choice());
            words.addAll(alike());
        }
        if (weighing.witness() == null) {
            words.add(SAID.say("one-channel"));
        }
        if (weighing.unexplainedDb() > UNEVEN_DB) {
            words.add(SAID.say("uneven", weighing.unexplainedDb()));
        }
        words.add(SAID.say("made-up"));
        contour().ifPresent(words::add);
        return words;
    }

    private String ofWhat() {
        return switch (session.mode() == null ? "" : session.mode()) {
            case "off-tape", "two-pass" -> SAID.say("of-both");
            default -> SAID.say("of-replay");
        };
    }

    private String told(LossCause c) {
        String figure = figure(c.quantity());
        double loss = Math.abs(shareOf(c.cause(), HIGH_HZ));
        if (c.cause().equals(Cause.EQUALISATION.key())) {
            return SAID.say("told-equalisation", c.detail(), figure);
        }
        boolean isAngle = c.quantity().unit().equals(ANGLE);
        return isAngle
                ? SAID.say("told-azimuth-angle", bare(c.quantity()), loss)
                : SAID.say("told-" + c.cause(), figure, loss);
    }

    private double shareOf(String key, double hz) {
        for (Cause cause : simplest.get(0).set().causes()) {
            if (cause.key().equals(key)) {
                return shareDb(simplest.get(0), cause, hz);
            }
        }
        return 0;
    }

    /** What a fitted set lets one of its causes take, dB re 1 kHz. */
    static double shareDb(SetFit fit, Cause cause, double hz) {
        if (cause == Cause.EQUALISATION) {
            return fit.set().shelf().db(hz);
        }
        double db = 0;
        for (int k = 0; k < fit.theta().length; k++) {
            LossTerm term = fit.set().terms().get(k);
            if (term.cause() == cause) {
                db += term.db(fit.theta()[k], hz) - term.db(fit.theta()[k], REFERENCE_HZ);
            }
        }
        return db;
    }

    private String choice() {
        List<String> parts =
                simplest.stream()
                        .limit(MOST_CHOICES)
                        .map(fit -> figures(fit, weighing.witness()))
                        .toList();
        return SAID.say("choice-" + parts.size(), parts.toArray());
    }

    /**
     * A sentence for each two causes of which one can stand for the other: what takes most of what
     * only one of two sets takes.
     */
    private List<String> alike() {
        List<String> sentences = new ArrayList<>();
        for (SetFit one : simplest) {
            for (SetFit other : simplest) {
                List<Cause> mine = without(one.set().causes(), other.set().causes());
                List<Cause> theirs = without(other.set().causes(), one.set().causes());
                if (!mine.isEmpty() && !theirs.isEmpty()) {
                    Cause first = most(one, mine);
                    Cause second = most(other, theirs);
                    if (first.compareTo(second) < 0) {
                        double from = Math.min(begins(one, first), begins(other, second));
                        sentences.add(alike(first, second, from));
                    }
                }
            }
        }
        return sentences.stream().distinct().toList();
    }

    private static Cause most(SetFit fit, List<Cause> causes) {
        return causes.stream()
                .max(Comparator.comparingDouble(c -> Math.abs(shareDb(fit, c, HIGH_HZ))))
                .orElseThrow();
    }

    private static String alike(Cause first, Cause second, double fromHz) {
        return SAID.say("alike-" + first.key(), second.words(), hertz(fromHz));
    }

    private static List<Cause> without(List<Cause> all, List<Cause> others) {
        return all.stream().filter(c -> !others.contains(c)).toList();
    }

    /** The lowest frequency at which a cause changes the level noticeably. */
    private double begins(SetFit fit, Cause cause) {
        for (double hz : weighing.curve().hz()) {
            if (hz > REFERENCE_HZ && Math.abs(shareDb(fit, cause, hz)) > BEGINS_DB) {
                return hz;
            }
        }
        return weighing.curve().toHz();
    }

    private Optional<String> contour() {
        List<ContourPoint> points =
                response.contour().stream().filter(p -> p.frequency().isKnown()).toList();
        return points.isEmpty()
                ? Optional.empty()
                : Optional.of(SAID.say("contour", points.get(0).frequency().value()));
    }

    /** The causes of a fitted set with their figures: {@code spacing 0.61 µm, gap 2.1 µm}. */
    static String figures(SetFit fit, Witness witness) {
        List<String> parts = new ArrayList<>();
        for (int k = 0; k < fit.theta().length; k++) {
            LossTerm term = fit.set().terms().get(k);
            double figure = term.figure(fit.theta()[k]);
            parts.add(
                    SAID.say("figure-" + term.cause().key(), told(term.cause(), figure, witness)));
        }
        if (fit.set().shelf() != null) {
            parts.add(SAID.say("figure-equalisation", constants(fit.set().shelf())));
        }
        return String.join(", ", parts);
    }

    private static String told(Cause cause, double figure, Witness witness) {
        if (cause == Cause.UPPER_EDGE) {
            return hertz(1 / figure);
        }
        return cause == Cause.AZIMUTH && witness != null && witness.minutesPerUm() > 0
                ? number(figure * witness.minutesPerUm()) + " " + ANGLE
                : number(figure) + " µm";
    }

    static String constants(Shelf shelf) {
        return SAID.say("constants", plain(shelf.tapeUs()), plain(shelf.replayUs()));
    }

    /** That a wrong equalisation is one of several explanations. */
    static String unsureShelf() {
        return SAID.say("unsure-shelf");
    }

    private static String plain(double us) {
        return String.format(Locale.ROOT, us == Math.rint(us) ? "%.0f µs" : "%.1f µs", us);
    }

    static String limit(Cause cause, Quantity limit) {
        if (cause == Cause.UPPER_EDGE) {
            return SAID.say("limit-above", hertz(limit.value()));
        }
        return limit.unit().equals(ANGLE)
                ? SAID.say("limit-below-angle", number(limit.value()))
                : SAID.say("limit-below", number(limit.value()) + " " + limit.unit());
    }

    private static String figure(Quantity q) {
        return q.unit().equals("Hz")
                ? hertz(q.value()) + " ± " + hertz(q.uncertainty())
                : bare(q) + " " + q.unit();
    }

    private static String bare(Quantity q) {
        int decimals = decimals(q.uncertainty());
        return number(q.value(), decimals) + " ± " + number(q.uncertainty(), decimals);
    }

    private static String number(double value) {
        return number(value, decimals(Math.abs(value) / 5));
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value).replace('-', '−');
    }

    private static int decimals(double size) {
        return size >= 2 ? 0 : size >= 0.2 ? 1 : size >= 0.02 ? 2 : 3;
    }

    private static String hertz(double hz) {
        return hz < 1000
                ? String.format(Locale.ROOT, "%.0f Hz", hz)
                : String.format(Locale.ROOT, "%.1f kHz", hz / 1000);
    }
}
