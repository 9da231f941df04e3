package offtape.report.apply.level;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.Noise;
import offtape.report.result.Results;
import offtape.report.result.Session;

/** Reads off a session how hot its machine can be recorded. */
public final class LevelReading {

    private static final Sentences SAID = Sentences.near(LevelReading.class);

    /** Values of K3 that are always told, percent. */
    private static final double[] USUAL_PERCENT = {0.5, 1, 3};

    private final Results results;
    private final Double referenceDbfs;
    private final TreeSet<Double> percents = new TreeSet<>();

    private LevelReading(Results results, List<Double> wanted) {
        this.results = results;
        this.referenceDbfs = results.session().referenceDbfs();
        for (double p : USUAL_PERCENT) {
            percents.add(p);
        }
        percents.addAll(wanted);
    }

    /**
     * Reads a session.
     *
     * @param wanted values of K3 to tell besides 0.5, 1 and 3 %, percent
     */
    public static OperatingLevels of(Results results, List<Double> wanted) {
        return new LevelReading(results, wanted).levels();
    }

    private OperatingLevels levels() {
        Session s = results.session();
        List<ChannelLevels> channels =
                results.distortion().stream()
                        .map(Distortion::channel)
                        .distinct()
                        .map(this::channel)
                        .toList();
        return new OperatingLevels(
                s.machineName(),
                s.tape(),
                s.tapeSpeedMmPerS(),
                s.madeAt(),
                referenceDbfs,
                channels,
                pair(channels));
    }

    private ChannelLevels channel(String channel) {
        Distortion ladder = ladder(channel);
        Quantity noise =
                results.noise().stream()
                        .filter(n -> n.channel().equals(channel))
                        .map(Noise::aWeighted)
                        .findFirst()
                        .orElse(Quantity.unknown(SAID.say("no-noise")));
        if (ladder == null) {
            Quantity none = noLadder();
            List<LevelAtK3> nothing =
                    percents.stream().map(p -> new LevelAtK3(p, none, none, none, none)).toList();
            return new ChannelLevels(
                    channel,
                    0,
                    nothing,
                    none,
                    none,
                    noise,
                    new double[0],
                    new double[0],
                    new double[0]);
        }
        LadderCurves curves = new LadderCurves(ladder);
        Quantity oneDb = ladder.levelAtCompressionOneDb();
        return new ChannelLevels(
                channel,
                ladder.frequencyHz(),
                percents.stream().map(p -> at(curves, p, noise)).toList(),
                oneDb,
                dbfs(oneDb),
                noise,
                ladder.k3Curve() == null ? new double[0] : ladder.k3Curve().recordLevelDb(),
                k3(ladder),
                range(ladder, noise));
    }

    private static Quantity noLadder() {
        return Quantity.unknown(SAID.say("no-ladder"));
    }

    private Distortion ladder(String channel) {
        Compression middle = Compression.ofMiddle(results.distortion(), channel);
        return middle == null ? null : middle.ladder();
    }

    private LevelAtK3 at(LadderCurves curves, double percent, Quantity noise) {
        Quantity record = curves.recordLevel(percent);
        Quantity replay = curves.replayLevel(record);
        return new LevelAtK3(percent, record, dbfs(record), replay, over(replay, noise));
    }

    private static Quantity over(Quantity level, Quantity noise) {
        if (!level.isKnown() || !noise.isKnown()) {
            return level.isKnown() ? noise : level;
        }
        return Quantity.known(
                level.value() - noise.value(),
                "dB",
                Math.hypot(level.uncertainty(), noise.uncertainty()));
    }

    private Quantity dbfs(Quantity level) {
        if (!level.isKnown()) {
            return level;
        }
        return referenceDbfs == null
                ? Quantity.unknown(SAID.say("no-reference"))
                : Quantity.known(level.value() + referenceDbfs, "dB", level.uncertainty());
    }

    private static double[] k3(Distortion ladder) {
        return ladder.k3Curve() == null ? new double[0] : ladder.k3Curve().value();
    }

    private static double[] range(Distortion ladder, Quantity noise) {
        FittedCurve k3 = ladder.k3Curve();
        FittedCurve replay = ladder.replayCurve();
        if (k3 == null || replay == null || !noise.isKnown()) {
            return new double[0];
        }
        double[] levels = k3.recordLevelDb();
        Double[] range =
                IntStream.range(0, levels.length)
                        .mapToObj(i -> LadderCurves.at(replay, replay.value(), levels[i]))
                        .toArray(Double[]::new);
        boolean whole = IntStream.range(0, range.length).allMatch(i -> range[i] != null);
        return whole
                ? IntStream.range(0, range.length)
                        .mapToDouble(i -> range[i] - noise.value())
                        .toArray()
                : new double[0];
    }

    private List<PairLevel> pair(List<ChannelLevels> channels) {
        List<PairLevel> pair = new ArrayList<>();
        for (double p : percents) {
            pair.add(
                    first(
                            PairLevel.K3,
                            p,
                            channels,
                            c ->
                                    c.atK3().stream()
                                            .filter(l -> l.k3Percent() == p)
                                            .findFirst()
                                            .orElseThrow()
                                            .recordLevel()));
        }
        pair.add(first(PairLevel.COMPRESSION, 1, channels, ChannelLevels::oneDbLevel));
        return pair;
    }

    private PairLevel first(
            String what,
            double value,
            List<ChannelLevels> channels,
            Function<ChannelLevels, Quantity> level) {
        ChannelLevels first =
                channels.stream()
                        .filter(c -> level.apply(c).isKnown())
                        .min(Comparator.comparingDouble(c -> level.apply(c).value()))
                        .orElse(null);
        if (first == null) {
            Quantity none = channels.isEmpty() ? noLadder() : level.apply(channels.get(0));
            return new PairLevel(what, value, none, none, null);
        }
        Quantity at = level.apply(first);
        return new PairLevel(what, value, at, dbfs(at), first.channel());
    }
}
