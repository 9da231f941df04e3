package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.Dropout;
import offtape.report.result.DropoutSummary;

/** Short losses of level on the steady tones of a programme, channel by channel. */
public final class DropoutSearch {

    private static final Sentences SAID = Sentences.near(DropoutSearch.class);

    private static final double SHORTEST_TONE_S = 4;

    /** A tone must be this high for 10 ms to be told, and this low to be steady on tape. */
    private static final double LOWEST_HZ = 900;

    private static final double HIGHEST_HZ = 12_500;

    /** Tones weaker than this rather show noise. */
    private static final double WEAKEST_DB = -30;

    /** What the depth of a dropout is known within, dB, k = 2. */
    private static final double DEPTH_UNCERTAINTY_DB = 0.3;

    private final ProgrammeReturn ret;
    private final List<List<LevelLoss.Loss>> losses = new ArrayList<>();
    private final double[] seconds;

    private DropoutSearch(ProgrammeReturn ret) {
        this.ret = ret;
        this.seconds = new double[ret.channels()];
        for (int c = 0; c < ret.channels(); c++) {
            losses.add(new ArrayList<>());
        }
        ret.cues(Cue.Tone.class).stream()
                .filter(t -> t.channels() == ChannelSet.BOTH)
                .filter(t -> t.frequencyHz() >= LOWEST_HZ && t.frequencyHz() <= HIGHEST_HZ)
                .filter(t -> t.levelDb() >= WEAKEST_DB)
                .filter(t -> ret.sheet().seconds(t.frames()) >= SHORTEST_TONE_S)
                .forEach(this::search);
    }

    /**
     * What was found.
     *
     * @param dropouts in order of time
     */
    public record Found(List<Dropout> dropouts, DropoutSummary summary) {}

    /** Searches every steady tone that is long and high enough. */
    public static Found find(ProgrammeReturn ret) {
        DropoutSearch search = new DropoutSearch(ret);
        List<Dropout> dropouts = search.dropouts();
        return new Found(dropouts, search.summary(dropouts));
    }

    private void search(Cue.Tone tone) {
        List<Optional<LevelCurve>> curves = LevelCurve.of(ret, tone);
        for (int c = 0; c < losses.size(); c++) {
            if (curves.get(c).isPresent()) {
                LevelCurve curve = curves.get(c).get();
                seconds[c] += curve.db().length / curve.rateHz();
                losses.get(c).addAll(LevelLoss.in(curve));
            }
        }
    }

    private List<Dropout> dropouts() {
        List<Dropout> all = new ArrayList<>();
        for (int c = 0; c < losses.size(); c++) {
            for (LevelLoss.Loss loss : losses.get(c)) {
                all.add(
                        new Dropout(
                                ProgrammeReturn.channelName(c),
                                loss.startSeconds(),
                                loss.milliseconds(),
                                loss.depthDb(),
                                isCommon(loss, c)));
            }
        }
        all.sort(Comparator.comparingDouble(Dropout::atSeconds).thenComparing(Dropout::channel));
        return all;
    }

    /** Whether the other channel drops out during some of the same time. */
    private boolean isCommon(LevelLoss.Loss loss, int channel) {
        return losses.size() > 1
                && losses.get(1 - channel).stream()
                        .anyMatch(
                                other ->
                                        other.startSeconds() < loss.endSeconds()
                                                && loss.startSeconds() < other.endSeconds());
    }

    private DropoutSummary summary(List<Dropout> dropouts) {
        double searched = 0;
        for (double s : seconds) {
            searched = Math.max(searched, s);
        }
        if (searched == 0) {
            Quantity none = Quantity.unknown(SAID.say("no-tone-for-dropouts"));
            return new DropoutSummary(0, none, none, none);
        }
        double minutes = searched / 60;
        long places =
                dropouts.stream().filter(d -> !(d.common() && d.channel().equals("right"))).count();
        // A count of rare events scatters by its root (Poisson); one is allowed for with none.
        Quantity rate =
                Quantity.known(
                        places / minutes, "1/min", 2 * Math.sqrt(Math.max(1, places)) / minutes);
        Optional<Dropout> deepest =
                dropouts.stream().max(Comparator.comparingDouble(Dropout::depthDb));
        Optional<Dropout> longest =
                dropouts.stream().max(Comparator.comparingDouble(Dropout::milliseconds));
        Quantity no = Quantity.unknown(SAID.say("no-dropout"));
        return new DropoutSummary(
                searched,
                rate,
                deepest.map(d -> Quantity.known(d.depthDb(), "dB", DEPTH_UNCERTAINTY_DB))
                        .orElse(no),
                longest.map(
                                d ->
                                        Quantity.known(
                                                d.milliseconds(),
                                                "ms",
                                                Math.max(1, 0.1 * d.milliseconds())))
                        .orElse(no));
    }
}
