package offtape.report.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.Programme;
import offtape.core.unit.Quantity;
import offtape.report.locate.Location;
import offtape.report.locate.Locator;
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
        Location location = Locator.locate(programme, recording);
        return new Measurement(new ProgrammeReturn(programme, recording, location))
                .measure(session, notes);
    }

    private Results measure(Session session, List<String> fileNotes) {
        CompletableFuture<Speed> speed = async(() -> SpeedTone.measure(ret));
        CompletableFuture<NoiseDensities> noise =
                async(() -> NoiseDensities.measure(ret).orElse(null));
        CompletableFuture<ReferenceLevels> reference =
                async(() -> ReferenceLevels.measure(ret).orElse(null));
        List<CompletableFuture<FollowedSweep>> sweeps = new ArrayList<>();
        for (Cue.Sweep s : ret.cues(Cue.Sweep.class)) {
            if (s.channels() == ChannelSet.BOTH) {
                sweeps.add(async(() -> follow(s)));
            }
        }
        List<FollowedSweep> followed = sweeps.stream().map(CompletableFuture::join).toList();
        List<Distortion> ladders = ladders(reference.join());
        requireSomething(followed, ladders, speed.join());
        Polarity polarity = Polarity.of(ret, followed);
        List<HealthNote> health =
                new ArrayList<>(
                        new HealthCheck(ret).notes(reference.join(), speed.join(), polarity));
        fileNotes.forEach(n -> health.add(new HealthNote("warning", "file", n)));
        health.addAll(new SelfCheck(ret).notes(responses(followed, noise.join())));
        return new Results(
                Results.FORMAT,
                Results.VERSION,
                session,
                timing(polarity),
                speed.join(),
                responses(followed, noise.join()),
                ladders,
                noises(reference.join(), noise.join(), ladders),
                new ChannelMeasure(ret, reference.join()).measure(quietest(followed), noise.join()),
                DropoutSearch.find(ret),
                health,
                Verdict.open("No limits were applied to these figures."));
    }

    private static <T> CompletableFuture<T> async(Supplier<T> work) {
        return CompletableFuture.supplyAsync(work);
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
            }
        }
        return result;
    }

    private List<Response> responses(List<FollowedSweep> sweeps, NoiseDensities noise) {
        List<Response> result = new ArrayList<>();
        for (FollowedSweep sweep : sweeps) {
            double speed = ret.speedRatio(sweep.cue().startFrame(), sweep.cue().frames());
            for (int c = 0; c < ret.channels(); c++) {
                Response response =
                        new ResponseMeasure(
                                        sweep,
                                        c,
                                        noise == null ? null : noise.densities()[c],
                                        speed)
                                .measure(ProgrammeReturn.channelName(c));
                if (response != null) {
                    result.add(response);
                }
            }
        }
        return result;
    }

    private List<Noise> noises(
            ReferenceLevels reference, NoiseDensities noise, List<Distortion> ladders) {
        NoiseMeasure measure = new NoiseMeasure(ret, reference, noise);
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
