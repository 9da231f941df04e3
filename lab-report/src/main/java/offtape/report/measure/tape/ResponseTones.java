package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import offtape.core.standard.TimeConstants;
import offtape.core.tape.ListedTone;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.TapeResponse;

/**
 * The tones that show the response, and the one they are held against.
 *
 * @param tones by rising frequency; empty if too few are known to belong together
 * @param zero null if there are none
 * @param note what is taken for granted, or why there is no response; a plain sentence
 */
record ResponseTones(List<NamedTone> tones, ReferenceTone zero, String note) {

    private static final Sentences SAID = Sentences.near(ResponseTones.class);

    private static final int FEWEST = 3;

    /** Tones of one series lie no further apart in level than a reference tone lies above them. */
    private static final double REFERENCE_ABOVE_DB = 6;

    private static final double NEIGHBOUR_OCTAVES = 2;

    private static final double SAME = 0.01;

    /** Tones for level, azimuth and speed last longer than those of the response. */
    private static final double LONGER = 1.6;

    /** By the levels of the list if it states them, else by the order of the recording. */
    static ResponseTones of(List<NamedTone> tones, ReferenceTone reference) {
        List<NamedTone> levelled = tones.stream().filter(t -> t.recordedDb() != null).toList();
        return levelled.size() > 1 && reference.tone().recordedDb() != null
                ? byList(levelled, reference)
                : byOrder(tones);
    }

    private static ResponseTones byList(List<NamedTone> levelled, ReferenceTone reference) {
        List<NamedTone> meant =
                levelled.stream().filter(t -> t.isFor(ListedTone.Purpose.RESPONSE)).toList();
        return new ResponseTones(
                sorted(meant.size() > 1 ? meant : levelled),
                reference,
                SAID.say("response-by-list"));
    }

    private static ResponseTones byOrder(List<NamedTone> tones) {
        List<NamedTone> series = longest(tones);
        if (series.size() > FEWEST) {
            series = withoutOthers(series);
        }
        if (series.size() < FEWEST) {
            return new ResponseTones(List.of(), null, SAID.say("response-too-few"));
        }
        List<NamedTone> ofSeries = series;
        ReferenceTone zero =
                ofSeries.stream()
                        .filter(ReferenceTone::isForLevel)
                        .min(Comparator.comparingDouble(ResponseTones::fromOneKilohertz))
                        .map(t -> new ReferenceTone(t, SAID.say("zero-usual")))
                        .orElseGet(
                                () ->
                                        new ReferenceTone(
                                                ofSeries.stream()
                                                        .min(
                                                                Comparator.comparingDouble(
                                                                        ResponseTones
                                                                                ::fromOneKilohertz))
                                                        .orElseThrow(),
                                                SAID.say("zero-nearest")));
        return new ResponseTones(
                sorted(series),
                zero,
                SAID.say(
                        "response-by-order",
                        series.get(0).number(),
                        series.get(series.size() - 1).number()));
    }

    private static double fromOneKilohertz(NamedTone t) {
        return Math.abs(Math.log(t.aboutHz() / 1000));
    }

    private static List<NamedTone> sorted(List<NamedTone> tones) {
        return tones.stream().sorted(Comparator.comparingDouble(NamedTone::aboutHz)).toList();
    }

    /** The longest run of tones that follow each other and have all different frequencies. */
    private static List<NamedTone> longest(List<NamedTone> tones) {
        List<NamedTone> best = List.of();
        List<NamedTone> run = new ArrayList<>();
        for (NamedTone tone : tones) {
            for (int i = run.size() - 1; i >= 0; i--) {
                if (Math.abs(Math.log(run.get(i).aboutHz() / tone.aboutHz())) < SAME) {
                    run.subList(0, i + 1).clear();
                    break;
                }
            }
            run.add(tone);
            best = run.size() > best.size() ? List.copyOf(run) : best;
        }
        return best;
    }

    /**
     * Without tones of other purpose at either end: those that last much longer than the tones of
     * the series, or stand out over their neighbours in frequency, and what lies beyond them.
     */
    private static List<NamedTone> withoutOthers(List<NamedTone> series) {
        double usualS =
                Ranked.median(series.stream().mapToDouble(t -> t.heard().seconds()).toArray());
        int middle = series.size() / 2;
        int from = 0;
        int to = series.size();
        for (int i = 0; i < series.size(); i++) {
            NamedTone tone = series.get(i);
            boolean isOther = tone.heard().seconds() > LONGER * usualS || isAbove(tone, series);
            if (isOther && i <= middle && series.size() - i > FEWEST) {
                from = i + 1;
            } else if (isOther && i > middle && i - from >= FEWEST) {
                to = Math.min(to, i);
            }
        }
        return series.subList(from, to);
    }

    private static boolean isAbove(NamedTone tone, List<NamedTone> series) {
        double[] beside =
                series.stream()
                        .filter(t -> t != tone)
                        .filter(
                                t ->
                                        Math.abs(Math.log(t.aboutHz() / tone.aboutHz()))
                                                < NEIGHBOUR_OCTAVES * Math.log(2))
                        .mapToDouble(t -> t.heard().loudestDb())
                        .toArray();
        return beside.length > 0
                && tone.heard().loudestDb() - Ranked.median(beside) > REFERENCE_ABOVE_DB;
    }

    /** The response of each channel on which the zero is heard. */
    List<TapeResponse> curves(int channels, TimeConstants tape, TimeConstants machine) {
        List<TapeResponse> all = new ArrayList<>();
        for (int c = 0; c < channels && zero != null; c++) {
            int channel = c;
            List<NamedTone> heard =
                    tones.stream().filter(t -> t.heard().levels().get(channel).isKnown()).toList();
            if (zero.tone().heard().levels().get(c).isKnown() && heard.size() > 1) {
                all.add(curve(c, heard, tape, machine));
            }
        }
        return all;
    }

    private TapeResponse curve(
            int channel, List<NamedTone> heard, TimeConstants tape, TimeConstants machine) {
        Quantity zeroLevel = zero.tone().heard().levels().get(channel);
        double zeroDb = zeroLevel.value() - recorded(zero.tone());
        boolean isCorrected = tape != null && machine != null;
        int n = heard.size();
        double[] asRead = new double[n];
        double[] doubt = new double[n];
        double[] corrected = new double[n];
        for (int i = 0; i < n; i++) {
            NamedTone tone = heard.get(i);
            Quantity level = tone.heard().levels().get(channel);
            asRead[i] = level.value() - recorded(tone) - zeroDb;
            doubt[i] =
                    tone == zero.tone()
                            ? 0
                            : Math.hypot(level.uncertainty(), zeroLevel.uncertainty());
            corrected[i] =
                    isCorrected
                            ? asRead[i]
                                    - difference(tone.aboutHz(), tape, machine)
                                    + difference(zero.tone().aboutHz(), tape, machine)
                            : 0;
        }
        return new TapeResponse(
                ProgrammeReturn.channelName(channel),
                heard.stream().mapToInt(NamedTone::number).toArray(),
                heard.stream().mapToDouble(NamedTone::aboutHz).toArray(),
                asRead,
                doubt,
                isCorrected ? corrected : null);
    }

    private static double recorded(NamedTone tone) {
        return tone.recordedDb() == null ? 0 : tone.recordedDb();
    }

    /** What a perfect machine set to other constants than the tape's reads, dB re 1 kHz. */
    private static double difference(double hz, TimeConstants tape, TimeConstants machine) {
        return tape.fluxDb(hz) - machine.fluxDb(hz);
    }
}
