package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.core.fault.UnusableInputException;
import offtape.core.tape.ListedTone;
import offtape.core.tape.ToneList;
import offtape.core.text.Sentences;
import offtape.report.result.TapeSeries;

/**
 * What each tone was recorded as.
 *
 * @param tones in order
 * @param series the list that fits
 * @param notes what is to be said of it
 */
record Naming(List<NamedTone> tones, TapeSeries series, List<String> notes) {

    private static final Sentences SAID = Sentences.near(Naming.class);

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
        Double speedToneHz = question.speedToneHz();
        if (speedToneHz != null && tones.stream().noneMatch(t -> t.isOf(speedToneHz))) {
            throw NamingWords.noSpeedToneOf(list, speedToneHz, file);
        }
        List<Double> missing =
                IntStream.range(0, list.tones().size())
                        .filter(e -> Arrays.stream(fit.entry()).noneMatch(x -> x == e))
                        .mapToObj(e -> list.tones().get(e).frequencyHz())
                        .toList();
        if (!missing.isEmpty()) {
            notes.add(
                    SAID.say(
                            "not-found",
                            missing.stream()
                                    .map(NamingWords::hz)
                                    .collect(Collectors.joining(", "))));
        }
        NamingWords.strange(strange).forEach(notes::add);
        String name = list.name() == null ? SAID.say("given-list") : list.name();
        return new Naming(
                tones,
                new TapeSeries("given", name, fit.matched(), fit.factor(), false, missing),
                notes);
    }

    private static Naming bySeries(List<HeardTone> heard, Double speedToneHz, String file) {
        double[] hz = SeriesFit.distinct(heard.stream().mapToDouble(HeardTone::hz).toArray());
        double speedHz = speedToneHz == null ? 0 : speedTone(heard, speedToneHz, file);
        List<SeriesFit> fits =
                speedToneHz == null ? SeriesFit.of(hz) : SeriesFit.of(hz, speedHz, speedToneHz);
        if (fits.isEmpty()) {
            return unnamed(heard, speedToneHz, speedHz);
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
        if (speedToneHz == null) {
            mistake(fit, hz).ifPresent(notes::add);
        }
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
    private static Naming unnamed(List<HeardTone> heard, Double speedToneHz, double speedHz) {
        List<NamedTone> tones = new ArrayList<>();
        for (int i = 0; i < heard.size(); i++) {
            boolean isNamed = speedToneHz != null && SeriesFit.isSame(heard.get(i).hz(), speedHz);
            tones.add(new NamedTone(i + 1, heard.get(i), isNamed ? speedToneHz : null, null));
        }
        return new Naming(
                tones,
                new TapeSeries("none", SAID.say("no-list"), 0, null, false, List.of()),
                List.of(SAID.say("fits-no-list")));
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
                .orElseThrow(() -> NamingWords.noSpeedTone(heard, nominalHz, file))
                .hz();
    }

    /** A sentence if the first tone would be a usual one for level at half or double speed only. */
    private static Optional<String> mistake(SeriesFit fit, double[] heard) {
        boolean isRight = fit.factor() > 0.7 && fit.factor() < 1.4;
        if (!isRight || isForLevel(fit.nominal()[0])) {
            return Optional.empty();
        }
        return SeriesFit.wrong(heard).stream()
                .filter(f -> f.matched() >= fit.matched() && isForLevel(f.nominal()[0]))
                .findFirst()
                .map(
                        f ->
                                SAID.say(
                                        f.factor() < 1
                                                ? "fits-at-half-as-well"
                                                : "fits-at-twice-as-well",
                                        NamingWords.hz(f.nominal()[0])));
    }

    private static boolean isForLevel(double hz) {
        return hz == 1000 || hz == 315;
    }
}
