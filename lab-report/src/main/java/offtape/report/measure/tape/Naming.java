package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.core.fault.UnusableInputException;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import offtape.report.result.TapeSeries;

/**
 * What each tone was recorded as.
 *
 * @param tones in order
 * @param series the list that fits
 * @param notes what is to be said of it
 */
record Naming(List<NamedTone> tones, TapeSeries series, List<String> notes) {

    /** The tone for speed may be off by so much once its frequency is named. */
    private static final double MEANT = 0.25;

    /**
     * Names tones.
     *
     * @param file name of the recording for messages
     * @throws UnusableInputException if the list of the tape, or the tone for speed, does not fit
     */
    static Naming of(List<HeardTone> heard, TapeQuestion question, String file) {
        return question.list() == null
                ? bySeries(heard, question.speedToneHz(), file)
                : byList(heard, question, file);
    }

    private static Naming byList(List<HeardTone> heard, TapeQuestion question, String file) {
        ToneList list = question.list();
        ListFit fit = ListFit.of(heard, list.tones());
        if (fit.matched() == 0 || 2 * fit.matched() < heard.size()) {
            throw NamingWords.misfit(heard, fit, list, file);
        }
        List<NamedTone> tones = new ArrayList<>();
        List<String> notes = new ArrayList<>(NamingWords.wrongSpeed(fit.factor()));
        List<NamedTone> strange = new ArrayList<>();
        for (int i = 0; i < heard.size(); i++) {
            int entry = fit.entry()[i];
            ListedTone listed = entry < 0 ? null : list.tones().get(entry);
            Double nominal = listed == null ? null : listed.frequencyHz();
            NamedTone tone = new NamedTone(i + 1, heard.get(i), nominal, listed);
            tones.add(tone);
            if (listed == null) {
                strange.add(tone);
            }
        }
        List<Double> missing =
                IntStream.range(0, list.tones().size())
                        .filter(e -> Arrays.stream(fit.entry()).noneMatch(x -> x == e))
                        .mapToObj(e -> list.tones().get(e).frequencyHz())
                        .toList();
        if (!missing.isEmpty()) {
            notes.add(
                    "Not found of the list: "
                            + missing.stream()
                                    .map(NamingWords::hz)
                                    .collect(Collectors.joining(", "))
                            + ". The recording may not hold them, or they drown in noise or are"
                            + " shorter than 1.2 s.");
        }
        NamingWords.strange(strange).forEach(notes::add);
        String name = list.name() == null ? "the list that was given" : list.name();
        return new Naming(
                tones,
                new TapeSeries("given", name, fit.matched(), fit.factor(), false, missing),
                notes);
    }

    private static Naming bySeries(List<HeardTone> heard, Double speedToneHz, String file) {
        double[] hz = SeriesFit.distinct(heard.stream().mapToDouble(HeardTone::hz).toArray());
        double known = speedToneHz == null ? 0 : speedTone(heard, speedToneHz, file) / speedToneHz;
        List<SeriesFit> fits = SeriesFit.of(hz, known);
        if (fits.isEmpty()) {
            return unnamed(heard, speedToneHz);
        }
        SeriesFit fit = fits.get(0);
        List<NamedTone> tones = new ArrayList<>();
        for (int i = 0; i < heard.size(); i++) {
            double nominal = nominal(heard.get(i).hz(), hz, fit);
            tones.add(
                    new NamedTone(
                            i + 1, heard.get(i), nominal > 0 ? (Double) nominal : null, null));
        }
        List<String> notes = new ArrayList<>(NamingWords.wrongSpeed(fit.factor()));
        if (fits.size() > 1) {
            notes.add(NamingWords.otherWays(fits, hz));
        }
        mistake(fit, hz, known).ifPresent(notes::add);
        NamingWords.strange(tones.stream().filter(t -> t.nominalHz() == null).toList())
                .forEach(notes::add);
        int matched = (int) tones.stream().filter(t -> t.nominalHz() != null).count();
        return new Naming(
                tones,
                new TapeSeries(
                        fit.series().kind(),
                        fit.series().words(),
                        matched,
                        fit.factor(),
                        fits.size() > 1,
                        List.of()),
                notes);
    }

    private static double nominal(double heard, double[] distinct, SeriesFit fit) {
        int nearest =
                IntStream.range(0, distinct.length)
                        .boxed()
                        .min(
                                Comparator.comparingDouble(
                                        i -> Math.abs(Math.log(distinct[i] / heard))))
                        .orElseThrow();
        return fit.nominal()[nearest];
    }

    /** Nothing fits; the tone for speed, if it is named, still has its frequency. */
    private static Naming unnamed(List<HeardTone> heard, Double speedToneHz) {
        List<NamedTone> tones = new ArrayList<>();
        for (int i = 0; i < heard.size(); i++) {
            boolean isNamed = speedToneHz != null && isNear(heard.get(i).hz(), speedToneHz);
            tones.add(new NamedTone(i + 1, heard.get(i), isNamed ? speedToneHz : null, null));
        }
        return new Naming(
                tones,
                new TapeSeries("none", "no usual list", 0, null, false, List.of()),
                List.of(
                        "The tones fit no usual list of frequencies within 10 % of the right speed,"
                                + " half or double speed. Write them down with --list-template and"
                                + " give them with --tones."));
    }

    private static boolean isNear(double heardHz, double nominalHz) {
        return Math.abs(Math.log(heardHz / nominalHz)) < Math.log1p(MEANT);
    }

    /** The frequency heard of the tone for speed: of those near it the longest. */
    private static double speedTone(List<HeardTone> heard, double nominalHz, String file) {
        return heard.stream()
                .filter(t -> isNear(t.hz(), nominalHz))
                .min(
                        Comparator.comparingDouble(
                                        (HeardTone t) ->
                                                Math.floor(
                                                        10
                                                                * Math.abs(
                                                                        Math.log(
                                                                                t.hz()
                                                                                        / nominalHz))))
                                .thenComparingDouble(t -> -t.seconds()))
                .orElseThrow(
                        () ->
                                new UnusableInputException(
                                        String.format(
                                                Locale.ROOT,
                                                "No tone within 25 %% of %s was found in %s. Heard"
                                                        + " were %s.",
                                                NamingWords.hz(nominalHz),
                                                file,
                                                NamingWords.some(
                                                        heard.stream()
                                                                .map(t -> NamingWords.hz(t.hz()))
                                                                .distinct()
                                                                .toList()))))
                .hz();
    }

    /** A sentence if the first tone would be a usual one for level at half or double speed only. */
    private static Optional<String> mistake(SeriesFit fit, double[] heard, double known) {
        boolean isRight = fit.factor() > 0.7 && fit.factor() < 1.4;
        if (!isRight || known > 0 || isForLevel(fit.nominal()[0])) {
            return Optional.empty();
        }
        return SeriesFit.wrong(heard).stream()
                .filter(f -> f.matched() >= fit.matched() && isForLevel(f.nominal()[0]))
                .findFirst()
                .map(
                        f ->
                                String.format(
                                        Locale.ROOT,
                                        "The tones fit as well at %s the speed, where the first one"
                                                + " would be the usual %s: check the speed switch of"
                                                + " the machine, or say --speed-tone.",
                                        f.factor() < 1 ? "half" : "twice",
                                        NamingWords.hz(f.nominal()[0])));
    }

    private static boolean isForLevel(double hz) {
        return hz == 1000 || hz == 315;
    }
}
