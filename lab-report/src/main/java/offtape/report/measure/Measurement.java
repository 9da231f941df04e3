package offtape.report.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChannelChoice;
import offtape.core.fault.Background;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import offtape.core.unit.Quantity;
import offtape.report.locate.Location;
import offtape.report.locate.Locator;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.ChannelMeasure;
import offtape.report.measure.channel.CrosstalkMeasure;
import offtape.report.measure.channel.DropoutSearch;
import offtape.report.measure.channel.Polarity;
import offtape.report.measure.distortion.LadderHealth;
import offtape.report.measure.distortion.LadderMeasure;
import offtape.report.measure.loss.LossMeasure;
import offtape.report.measure.noise.ModulationNoise;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.noise.NoiseMeasure;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.measure.sweep.FollowedHarmonics;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.HarmonicFollower;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.sweep.SweepResponses;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.Timing;
import offtape.report.result.Verdict;

/** From a recording and its programme to results: finds the programme, then runs every measure. */
public final class Measurement {

    private static final String ANOTHER_MODE =
            "A tape recorded elsewhere was replayed, so the recording does not show the way from"
                    + " record to replay head.";

    private final ProgrammeReturn ret;

    private Measurement(ProgrammeReturn ret) {
        this.ret = ret;
    }

    /**
     * Measures a return.
     *
     * @param session what is known of the recording beforehand
     * @param notes remarks on the file itself, as plain sentences
     * @throws UnusableInputException if the programme is not in the recording or nothing of it can
     *     be measured
     */
    public static Results run(
            Programme programme, AudioSource recording, Session session, List<String> notes) {
        AudioSource pair = ChannelChoice.firstTwo(recording);
        Location location = Locator.locate(programme, pair);
        return new Measurement(new ProgrammeReturn(programme, pair, location))
                .measure(session, notes);
    }

    private Results measure(Session session, List<String> fileNotes) {
        CompletableFuture<Speed> speedTask = Background.start(() -> SpeedTone.measure(ret));
        CompletableFuture<NoiseDensities> noiseTask =
                Background.start(() -> NoiseDensities.measure(ret).orElse(null));
        CompletableFuture<DropoutSearch.Found> dropouts =
                Background.start(() -> DropoutSearch.find(ret));
        CompletableFuture<SelfCheck> selfCheck = Background.start(() -> new SelfCheck(ret));
        List<CompletableFuture<FollowedSweep>> sweepTasks =
                ret.cues(Cue.Sweep.class).stream()
                        .filter(s -> s.channels() == ChannelSet.BOTH)
                        .map(s -> Background.start(() -> follow(s)))
                        .toList();
        CompletableFuture<FollowedHarmonics> harmonics =
                Background.start(() -> HarmonicFollower.followLoudest(ret).orElse(null));
        ReferenceLevels reference = ReferenceLevels.measure(ret).orElse(null);
        List<Distortion> ladders = ladders(reference);
        List<FollowedSweep> sweeps = sweepTasks.stream().map(Background::result).toList();
        Speed speed = Background.result(speedTask);
        NoiseDensities noise = Background.result(noiseTask);
        requireSomething(sweeps, ladders, speed);
        Polarity polarity = Polarity.of(ret, sweeps);
        CrosstalkMeasure crosstalk = new CrosstalkMeasure(ret, reference);
        int dead = reference == null ? -1 : reference.deadChannel();
        List<Response> responses =
                DeadChannel.without(
                        dead,
                        sweeps,
                        SweepResponses.of(
                                ret,
                                sweeps,
                                Background.result(harmonics),
                                noise == null ? null : noise.densities(),
                                crosstalk.leakage()));
        List<HealthNote> health =
                new ArrayList<>(new HealthCheck(ret).notes(reference, speed, polarity, crosstalk));
        health.addAll(LadderHealth.notes(ladders));
        fileNotes.forEach(n -> health.add(new HealthNote("warning", "file", n)));
        SelfCheck self = Background.result(selfCheck);
        health.addAll(self.notes(responses, crosstalk.leakage()));
        Channels channels =
                new ChannelMeasure(ret, reference, crosstalk, session)
                        .measure(quietest(sweeps), noise);
        if (reference != null && reference.deadChannel() < 0) {
            health.addAll(self.ofTake(channels.interchannelDelayWander()));
        }
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                session,
                timing(polarity),
                speed,
                responses,
                ladders,
                noises(reference, noise, ladders),
                channels,
                Background.result(dropouts).dropouts(),
                health,
                Verdict.open("No limits were applied to these figures."),
                Background.result(dropouts).summary(),
                new LossMeasure(session, channels, lowestRateHz()).measure(responses));
    }

    private int lowestRateHz() {
        return Math.min(ret.recording().sampleRateHz(), ret.programme().audio().sampleRateHz());
    }

    private FollowedSweep follow(Cue.Sweep s) {
        return new SweepFollower(s, ret.sheet().sampleRateHz()).follow(ret);
    }

    private void requireSomething(
            List<FollowedSweep> sweeps, List<Distortion> ladders, Speed speed) {
        if (sweeps.isEmpty() && ladders.isEmpty() && !speed.deviation().isKnown()) {
            throw new UnusableInputException(
                    ret.recording().name()
                            + " is cut short beyond use: no sweep, ladder or speed tone of the"
                            + " programme is whole in it. Record the whole programme again.");
        }
    }

    private Timing timing(Polarity polarity) {
        Location l = ret.location();
        return new Timing(
                Quantity.known(1000 * l.delaySeconds(), "ms", 1000 * l.delayUncertaintySeconds()),
                Quantity.unknown(ANOTHER_MODE),
                Quantity.unknown(ANOTHER_MODE),
                polarity.word(),
                Quantity.unknown(
                        "With a tape recorded elsewhere an error of the recorder's clock looks like"
                                + " one of tape speed and cannot be told from it."));
    }

    private List<Distortion> ladders(ReferenceLevels reference) {
        List<Distortion> result = new ArrayList<>();
        if (reference != null) {
            LadderMeasure measure = new LadderMeasure(ret, reference);
            for (Cue.Ladder ladder : ret.cues(Cue.Ladder.class)) {
                result.addAll(measure.measure(ladder));
                if (reference.deadChannel() >= 0) {
                    result.add(new DeadChannel(reference.deadChannel()).distortion(ladder));
                }
            }
        }
        return result;
    }

    private List<Noise> noises(
            ReferenceLevels reference, NoiseDensities noise, List<Distortion> ladders) {
        NoiseMeasure measure =
                new NoiseMeasure(ret, reference, noise, ModulationNoise.of(ret, noise));
        List<Noise> result = new ArrayList<>();
        for (int c = 0; c < ret.channels(); c++) {
            result.add(measure.measure(c, ladders));
        }
        return result;
    }

    private static FollowedSweep quietest(List<FollowedSweep> sweeps) {
        return sweeps.stream().min(Comparator.comparingDouble(s -> s.cue().levelDb())).orElse(null);
    }
}
