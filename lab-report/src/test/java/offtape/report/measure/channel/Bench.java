package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.PlayedMachine;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.Leakage;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.tone.ReferenceLevels;
import offtape.report.result.Channels;
import offtape.report.result.Session;

/** A short programme played through a machine, its place in the return known. */
final class Bench {

    static final int RATE = 44_100;

    private static final CueSheet SHEET = sheet(2.5);
    private static final Programme PROGRAMME = programme(SHEET);

    private Bench() {}

    /** Silence, a reference tone, a sweep on both channels, 2.5 s long. */
    static MachineRun run(String members) {
        return run(SHEET, members);
    }

    static MachineRun run(CueSheet sheet, String members) {
        String head = "{'format':'offtape-machine','version':1";
        String json = (head + (members.isEmpty() ? "" : "," + members) + "}").replace('\'', '"');
        return SimulatedMachine.of(MachineSpec.fromJson(json)).run(sheet);
    }

    static ProgrammeReturn play(MachineRun run) {
        return play(PROGRAMME, run);
    }

    static ProgrammeReturn play(Programme programme, MachineRun run) {
        double[][] out = PlayedMachine.sound(run, programme.audio());
        return there(programme, run, out[0], out[1]);
    }

    /** A return of these samples, in the place that the machine gave it. */
    static ProgrammeReturn there(
            Programme programme, MachineRun run, double[] left, double[] right) {
        double seconds = programme.sheet().seconds(programme.sheet().frames());
        double start = run.timeMap().returnSeconds(0);
        double stretch = (run.timeMap().returnSeconds(seconds) - start) / seconds;
        Location place =
                new Location(
                        TimeMap.straight(start, stretch, seconds),
                        run.frames() + 1,
                        start,
                        0,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        run.frames() + 1,
                        List.of());
        return new ProgrammeReturn(
                programme, new MemoryAudio("return", run.sampleRateHz(), left, right), place);
    }

    /** The fit over the sweep of the short programme. */
    static InterchannelDelay delay(ProgrammeReturn ret) {
        FollowedSweep sweep = follow(ret);
        NoiseDensities noise = NoiseDensities.measure(ret).orElse(null);
        double speed = ret.speedRatio(sweep.cue().startFrame(), sweep.cue().frames());
        CrosstalkMeasure crosstalk =
                new CrosstalkMeasure(ret, ReferenceLevels.measure(ret).orElse(null));
        return InterchannelDelay.of(
                PhaseBands.of(sweep, noise, speed, crosstalk.leakage()), crosstalk.looked());
    }

    /** The same where it is known that nothing leaks. */
    static InterchannelDelay delayWithoutLeak(ProgrammeReturn ret) {
        NoiseDensities noise = NoiseDensities.measure(ret).orElse(null);
        Leakage none = new Leakage(Leakage.Leak.NONE, Leakage.Leak.NONE);
        return InterchannelDelay.of(PhaseBands.of(follow(ret), noise, 1, none), true);
    }

    /** All that is said of the pair. */
    static Channels channels(ProgrammeReturn ret, Session session) {
        ReferenceLevels reference = ReferenceLevels.measure(ret).orElse(null);
        return new ChannelMeasure(ret, reference, new CrosstalkMeasure(ret, reference), session)
                .measure(follow(ret), NoiseDensities.measure(ret).orElse(null), null);
    }

    static Channels channels(ProgrammeReturn ret) {
        return channels(ret, new Session(null, null, 190.5, "reference-tape", "", null, "", ""));
    }

    private static FollowedSweep follow(ProgrammeReturn ret) {
        Cue.Sweep sweep =
                ret.cues(Cue.Sweep.class).stream()
                        .filter(s -> s.channels() == ChannelSet.BOTH)
                        .findFirst()
                        .orElseThrow();
        return new SweepFollower(sweep, ret.sheet().sampleRateHz()).follow(ret);
    }

    static Programme programme(CueSheet sheet) {
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        return new Programme(sheet, new MemoryAudio("programme", sheet.sampleRateHz(), sound));
    }

    static CueSheet sheet(double sweepSeconds) {
        return sheet(sweepSeconds, RATE);
    }

    /** Silence, reference tone and sweep on both channels. */
    static CueSheet sheet(double sweepSeconds, int rate) {
        List<Cue> cues = new ArrayList<>();
        long at = rate / 2;
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at, rate));
        at += rate + rate / 4;
        cues.add(new Cue.Tone("reference", ChannelSet.BOTH, at, rate, 1000, 0));
        at += rate + rate / 4;
        long length = Math.round(sweepSeconds * rate);
        double end = Math.min(20_000, 0.45 * rate);
        cues.add(new Cue.Sweep("sweep", ChannelSet.BOTH, at, length, 20, end, -20));
        at += length + rate / 4;
        return new CueSheet(rate, at, -18, 190.5, cues);
    }
}
