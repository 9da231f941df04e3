package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import offtape.core.unit.Quantity;
import offtape.report.result.ContourPoint;
import offtape.report.result.LossCause;
import offtape.report.result.Response;
import offtape.report.result.Session;

/** What the losses are, how sure that is and what looks alike, in plain sentences. */
final class LossWords {

    private static final double REFERENCE_HZ = 1000;
    private static final double HIGH_HZ = 10_000;

    /** A loss begins where a cause takes this much. */
    private static final double BEGINS_DB = 0.3;

    /** So much unevenness makes every cause doubtful. */
    private static final double UNEVEN_DB = 0.15;

    private static final int MOST_CHOICES = 3;

    static final String UNSURE_SHELF =
            "The curve may show a wrong equalisation, but other causes or other time constants"
                    + " explain it as well.";

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
            words.add("No cause of loss stands out of the uncertainty of the curve.");
        } else if (simplest.size() > 1) {
            words.add(choice());
            words.addAll(alike());
        }
        if (weighing.witness() == null) {
            words.add(
                    "One channel alone cannot tell a wide gap from a head that stands askew; the"
                            + " delay between two channels could, and is not known here.");
        }
        if (weighing.unexplainedDb() > UNEVEN_DB) {
            words.add(
                    String.format(
                            Locale.ROOT,
                            "The curve is uneven by %.1f dB beyond what any of these causes does,"
                                    + " so take the figures with care: equalisation trimmed by hand"
                                    + " and bias shape a curve too.",
                            weighing.unexplainedDb()));
        }
        words.add(
                "What the machine's own equalisation makes up for does not show: the figures are what"
                        + " is lost beyond it.");
        contour().ifPresent(words::add);
        return words;
    }

    private String ofWhat() {
        return switch (session.mode() == null ? "" : session.mode()) {
            case "off-tape", "two-pass" ->
                    "These are the losses of recording and replay together: record head, tape, bias"
                            + " and record equalisation are in them beside the replay head.";
            default -> "These are the losses of replay, if the tape holds what its programme says.";
        };
    }

    private String told(LossCause c) {
        String figure = figure(c.quantity());
        double loss = -shareOf(c.cause(), HIGH_HZ);
        String takes = String.format(Locale.ROOT, " takes %.1f dB at 10 kHz.", Math.abs(loss));
        return switch (c.cause()) {
            case "spacing" ->
                    "A space of " + figure + " between tape and head, as dirt makes it," + takes;
            case "gap" -> "A gap of " + figure + takes;
            case "gap-or-azimuth" ->
                    "A gap of effectively "
                            + figure
                            + ", or track width times tan α of as much from a head that stands"
                            + " askew,"
                            + takes;
            case "azimuth" ->
                    c.quantity().unit().equals("µm")
                            ? "A head that stands askew (track width times tan α is "
                                    + figure
                                    + ")"
                                    + takes
                            : "A head that stands " + figure + " askew" + takes;
            case "thickness" -> "A magnetised layer of " + figure + takes;
            case "equalisation" ->
                    "The equalisation is wrong: " + c.detail() + " give " + figure + " at 10 kHz.";
            default -> "An amplifier that ends at " + figure + takes;
        };
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
        return "The curve can be explained in more than one way: "
                + String.join("; or ", parts)
                + ".";
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
                        sentences.add(alike(List.of(first, second), from));
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

    private static String alike(List<Cause> pair, double fromHz) {
        String both = pair.get(0).words() + " and " + pair.get(1).words();
        return both.substring(0, 1).toUpperCase(Locale.ROOT)
                + both.substring(1)
                + " look alike above "
                + hertz(fromHz)
                + " on this recording.";
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
                : Optional.of(
                        String.format(
                                Locale.ROOT,
                                "In the bass the head's own contour shows, first at %.0f Hz; it is"
                                        + " listed with the frequency response.",
                                points.get(0).frequency().value()));
    }

    /** The causes of a fitted set with their figures: {@code spacing 0.61 µm, gap 2.1 µm}. */
    static String figures(SetFit fit, Witness witness) {
        List<String> parts = new ArrayList<>();
        for (int k = 0; k < fit.theta().length; k++) {
            LossTerm term = fit.set().terms().get(k);
            double figure = term.figure(fit.theta()[k]);
            String text =
                    switch (term.cause()) {
                        case UPPER_EDGE -> "upper edge of an amplifier " + hertz(1 / figure);
                        case APERTURE -> "gap or azimuth " + number(figure) + " µm";
                        case AZIMUTH ->
                                witness != null && witness.minutesPerUm() > 0
                                        ? "azimuth "
                                                + number(figure * witness.minutesPerUm())
                                                + " arc min"
                                        : "azimuth " + number(figure) + " µm";
                        default -> term.cause().key() + " " + number(figure) + " µm";
                    };
            parts.add(text);
        }
        if (fit.set().shelf() != null) {
            parts.add("equalisation (" + constants(fit.set().shelf()) + ")");
        }
        return String.join(", ", parts);
    }

    static String constants(Shelf shelf) {
        return plain(shelf.tapeUs()) + " on the tape and " + plain(shelf.replayUs()) + " in replay";
    }

    private static String plain(double us) {
        return String.format(Locale.ROOT, us == Math.rint(us) ? "%.0f µs" : "%.1f µs", us);
    }

    static String limit(Cause cause, Quantity limit) {
        return "The curve can be explained without it; if it takes part, it "
                + (cause == Cause.UPPER_EDGE
                        ? "lies above " + hertz(limit.value())
                        : "is less than " + number(limit.value()) + " " + limit.unit())
                + ".";
    }

    private static String figure(Quantity q) {
        if (q.unit().equals("Hz")) {
            return hertz(q.value()) + " ± " + hertz(q.uncertainty());
        }
        int decimals = decimals(q.uncertainty());
        String value = number(q.value(), decimals);
        return value + " ± " + number(q.uncertainty(), decimals) + " " + q.unit();
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
