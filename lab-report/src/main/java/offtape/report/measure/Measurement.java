package offtape.report.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.audio.ChannelChoice;
import offtape.core.fault.Background;
import offtape.core.fault.UnusableInputException;
import offtape.core.output.Sha256;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheetJson;
import offtape.core.programme.Programme;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.locate.Location;
import offtape.report.locate.Locator;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.channel.ChannelMeasure;
import offtape.report.measure.channel.CrosstalkMeasure;
import offtape.report.measure.channel.DropoutSearch;
import offtape.report.measure.channel.Polarity;
import offtape.report.measure.continuity.Jump;
import offtape.report.measure.continuity.JumpNotes;
import offtape.report.measure.continuity.JumpSearch;
import offtape.report.measure.distortion.LadderHealth;
import offtape.report.measure.distortion.LadderMeasure;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.loss.LossMeasure;
import offtape.report.measure.mode.Capture;
import offtape.report.measure.mode.ModeFigures;
import offtape.report.measure.noise.ModulationNoise;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.noise.NoiseMeasure;
import offtape.report.measure.pass.PassReading;
import offtape.report.measure.processing.ProcessingNotes;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.measure.speed.ToneReading;
import offtape.report.measure.sweep.FollowedHarmonics;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.HarmonicFollower;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.sweep.SweepResponses;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.measure.transport.OffTapeSpeed;
import offtape.report.result.Channels;
import offtape.report.result.Distortion;
import offtape.report.result.HealthNote;
import offtape.report.result.Noise;
import offtape.report.result.Response;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Speed;
import offtape.report.result.Verdict;

/** From a recording and its programme to results: finds the programme, then runs every measure. */
public final class Measurement {

    private static final Sentences SAID = Sentences.near(Measurement.class);

    private final ProgrammeReturn ret;

    /** Of a return whose place is known. */
    Measurement(ProgrammeReturn ret) {
        this.ret = ret;
    }

    /**
     * Finds the programme in a return.
     *
     * @throws UnusableInputException if it is not in the recording
     */
    public static Measurement of(Programme programme, AudioSource recording) {
        AudioSource pair = ChannelChoice.firstTwo(recording);
        Location location = Locator.locate(programme, pair);
        return new Measurement(new ProgrammeReturn(programme, pair, location));
    }

    /**
     * Measures a return.
     *
     * @param session what is known of the recording beforehand
     * @param capture what is said of how it came about
     * @param notes remarks on the file itself, as plain sentences
     * @throws UnusableInputException if the programme is not in the recording or nothing of it can
     *     be measured
     */
    public static Results run(
            Programme programme,
            AudioSource recording,
            Session session,
            Capture capture,
            List<String> notes) {
        return of(programme, recording).results(session, capture, notes);
    }

    /**
     * What one of several replays tells.
     *
     * @param file name of the return
     * @param sha256 its digest
     * @param notes remarks on the file that no results of it have, as plain sentences
     */
    public PassReading pass(String file, String sha256, List<String> notes) {
        return PassReading.of(ret, file, sha256, notes);
    }

    /** Where the time of the return jumps, for a look at a recording without measuring it. */
    public List<HealthNote> jumps() {
        return JumpNotes.of(JumpSearch.find(ret));
    }

    /**
     * Every measure.
     *
     * @param said what is known of the recording beforehand
     * @param capture what is said of how it came about
     * @param fileNotes remarks on the file itself, as plain sentences
     * @throws UnusableInputException if nothing of it can be measured
     */
    public Results results(Session said, Capture capture, List<String> fileNotes) {
        int rateHz = ret.recording().sampleRateHz();
        String sheet = Sha256.ofText(CueSheetJson.write(ret.sheet()));
        if (capture.loopback() != null) {
            capture.loopback().requireSame(rateHz, sheet);
        }
        Session session = said.withRecording(rateHz, sheet, ret.sheet().referenceDbfs());
        HealthCheck check = new HealthCheck(ret);
        CompletableFuture<ToneReading> speedTask = Background.start(() -> SpeedTone.measure(ret));
        CompletableFuture<NoiseDensities> noiseTask =
                Background.start(() -> NoiseDensities.measure(ret).orElse(null));
        CompletableFuture<DropoutSearch.Found> dropouts =
                Background.start(() -> DropoutSearch.find(ret));
        CompletableFuture<List<Jump>> jumps = Background.start(() -> JumpSearch.find(ret));
        CompletableFuture<SelfCheck> selfCheck = Background.start(() -> new SelfCheck(ret));
        List<CompletableFuture<FollowedSweep>> sweepTasks =
                ret.cues(Cue.Sweep.class).stream()
                        .filter(s -> s.channels() == ChannelSet.BOTH)
                        .map(s -> Background.start(() -> follow(s)))
                        .toList();
        CompletableFuture<FollowedHarmonics> harmonics =
                Background.start(() -> HarmonicFollower.followLoudest(ret).orElse(null));
        ReferenceLevels reference = ReferenceLevels.measure(ret).orElse(null);
        CrosstalkMeasure crosstalk = new CrosstalkMeasure(ret, reference);
        List<Distortion> ladders = ladders(reference, crosstalk.leakage());
        List<FollowedSweep> sweeps = sweepTasks.stream().map(Background::result).toList();
        ToneReading tone = Background.result(speedTask);
        Speed speed = tone.speed();
        NoiseDensities noise = Background.result(noiseTask);
        requireSomething(sweeps, ladders, speed);
        ModeFigures mode = new ModeFigures(ret, tone, ladders, capture, session.tapeSpeedMmPerS());
        KnownInterface known = capture.loopback();
        if (known != null) {
            requireMachine(known, mode, reference);
        }
        Polarity polarity = Polarity.of(ret, without(known, sweeps));
        CompletableFuture<Channels> channelTask =
                Background.start(
                        () ->
                                new ChannelMeasure(ret, reference, crosstalk, session)
                                        .measure(quietest(sweeps), noise, known));
        CompletableFuture<List<Noise>> noisesTask =
                Background.start(() -> noises(reference, noise, ladders));
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
                                crosstalk.leakage(),
                                unsteadiness(speed)));
        List<HealthNote> health =
                new ArrayList<>(check.notes(reference, speed, polarity, crosstalk));
        health.addAll(mode.notes());
        Speed told = mode.speed();
        if (mode.mode() == CaptureMode.OFF_TAPE) {
            OffTapeSpeed own = mode.transport(session.tapeSpeedMmPerS());
            told = told.withTransport(own.speed());
            health.addAll(own.notes());
        }
        health.addAll(LadderHealth.notes(ladders));
        health.addAll(ProcessingNotes.of(ladders, responses, noise, rateHz, nominalSpeed(session)));
        fileNotes.forEach(n -> health.add(new HealthNote("warning", "file", n)));
        health.addAll(JumpNotes.of(Background.result(jumps)));
        SelfCheck self = Background.result(selfCheck);
        health.addAll(self.notes(responses, crosstalk.leakage()));
        Channels channels = Background.result(channelTask);
        health.addAll(self.ofTake(channels.interchannelDelayWander(), reference));
        Results heard =
                new Results(
                        Results.FORMAT,
                        Results.VERSION,
                        session.withMode(mode.mode() == null ? null : mode.mode().key()),
                        mode.timing(polarity.word()),
                        told,
                        responses,
                        ladders,
                        Background.result(noisesTask),
                        channels,
                        Background.result(dropouts).dropouts(),
                        health,
                        Verdict.open(SAID.say("no-limits")),
                        Background.result(dropouts).summary());
        if (mode.mode() == CaptureMode.LOOPBACK) {
            return InterfaceAlone.of(
                    heard,
                    new InterfaceReading(heard, reference, quietest(sweeps), noise)
                            .figures(mode.meanDelay()));
        }
        return withLosses(
                known == null ? heard : new WithoutInterface(known, ret, reference).of(heard));
    }

    private static OptionalDouble nominalSpeed(Session session) {
        return session.tapeSpeedMmPerS() == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(session.tapeSpeedMmPerS());
    }

    private Results withLosses(Results results) {
        int lowestRateHz =
                Math.min(ret.recording().sampleRateHz(), ret.programme().audio().sampleRateHz());
        return results.withLosses(
                new LossMeasure(results.session(), results.channels(), lowestRateHz)
                        .measure(results.response()));
    }

    private void requireMachine(KnownInterface known, ModeFigures mode, ReferenceLevels reference) {
        if (mode.mode() == CaptureMode.LOOPBACK) {
            throw new UnusableInputException(SAID.say("is-loopback", ret.recording().name()));
        }
        for (int c = 0; c < ret.channels(); c++) {
            if (reference != null && reference.heard(c)) {
                known.requireHeard(ProgrammeReturn.channelName(c));
            }
        }
    }

    private List<FollowedSweep> without(KnownInterface known, List<FollowedSweep> sweeps) {
        return known == null ? sweeps : sweeps.stream().map(s -> s.without(known, ret)).toList();
    }

    /**
     * What of wow and flutter a sweep's bands see, as a share of the speed: they pass in a tenth of
     * a second or so.
     */
    static double unsteadiness(Speed speed) {
        boolean known = speed.wowRms().isKnown() && speed.flutterRms().isKnown();
        return known ? Math.hypot(speed.wowRms().value(), speed.flutterRms().value() / 2) / 100 : 0;
    }

    private FollowedSweep follow(Cue.Sweep s) {
        return new SweepFollower(s, ret.sheet().sampleRateHz()).follow(ret);
    }

    private void requireSomething(
            List<FollowedSweep> sweeps, List<Distortion> ladders, Speed speed) {
        if (sweeps.isEmpty() && ladders.isEmpty() && !speed.deviation().isKnown()) {
            throw new UnusableInputException(SAID.say("cut-short", ret.recording().name()));
        }
    }

    private List<Distortion> ladders(ReferenceLevels reference, Leakage leakage) {
        List<Distortion> result = new ArrayList<>();
        if (reference != null) {
            LadderMeasure measure = new LadderMeasure(ret, reference, leakage);
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
        return Background.each(
                IntStream.range(0, ret.channels()).boxed().toList(),
                c -> measure.measure(c, ladders));
    }

    private static FollowedSweep quietest(List<FollowedSweep> sweeps) {
        return sweeps.stream().min(Comparator.comparingDouble(s -> s.cue().levelDb())).orElse(null);
    }
}
