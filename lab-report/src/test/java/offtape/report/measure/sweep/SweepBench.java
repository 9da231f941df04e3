package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.machine.MachineRun;
import offtape.core.machine.ResponseTruth;
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
import offtape.report.result.Response;

/**
 * Sweeps alone on a simulated machine, their place known: what the measures of this package start
 * from.
 *
 * @param ret the return with the programme found in it
 * @param run the machine's truth
 */
record SweepBench(ProgrammeReturn ret, MachineRun run) {

    static final int RATE = 44_100;

    private static final double SILENCE_S = 3;
    private static final int STEP_S = 2;

    /**
     * Some silence, then a sweep of each level from 16 Hz to 20 kHz.
     *
     * @param members members of the machine's description besides format and version
     */
    static SweepBench of(String members, double sweepSeconds, double... levelsDb) {
        return of(members, sheet(false, sweepSeconds, levelsDb));
    }

    /** The same with two steps of 1 kHz at −20 and 0 dB before the sweeps. */
    static SweepBench withSteps(String members, double sweepSeconds, double... levelsDb) {
        return of(members, sheet(true, sweepSeconds, levelsDb));
    }

    private static SweepBench of(String members, CueSheet sheet) {
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        Programme programme = new Programme(sheet, new MemoryAudio("p.wav", RATE, sound));
        String json = "{\"format\": \"offtape-machine\", \"version\": 1, " + members + "}";
        MachineRun run = SimulatedMachine.of(MachineSpec.fromJson(json)).run(sheet);
        double[][] out = PlayedMachine.sound(run, programme.audio());
        double length = (double) sheet.frames() / RATE;
        double from = run.timeMap().returnSeconds(0);
        double to = run.timeMap().returnSeconds(length);
        Location place =
                new Location(
                        TimeMap.straight(from, (to - from) / length, length),
                        (double) out[0].length / RATE,
                        from,
                        0.001,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        (double) out[0].length / RATE,
                        List.of());
        MemoryAudio recording = new MemoryAudio("r.wav", RATE, out);
        return new SweepBench(new ProgrammeReturn(programme, recording, place), run);
    }

    private static CueSheet sheet(boolean steps, double sweepSeconds, double... levelsDb) {
        List<Cue> cues = new ArrayList<>();
        long at = RATE / 2;
        cues.add(new Cue.Silence("silence", ChannelSet.BOTH, at, (long) (SILENCE_S * RATE)));
        at = cues.get(0).endFrame() + RATE / 4;
        if (steps) {
            Cue ladder = ladder(at);
            cues.add(ladder);
            at = ladder.endFrame() + RATE / 4;
        }
        for (double level : levelsDb) {
            long frames = Math.round(sweepSeconds * RATE);
            String id = "sweep" + cues.size();
            cues.add(new Cue.Sweep(id, ChannelSet.BOTH, at, frames, 16, 20_000, level));
            at += frames + RATE / 4;
        }
        return new CueSheet(RATE, at + RATE / 4, -18, 190.5, cues);
    }

    private static Cue ladder(long at) {
        long step = (long) STEP_S * RATE;
        List<Cue.Step> steps =
                List.of(new Cue.Step(at, step, -20), new Cue.Step(at + step, step, 0));
        return new Cue.Ladder("steps", ChannelSet.BOTH, at, 2 * step, 1000, steps);
    }

    /** A sweep of the sheet. */
    Cue.Sweep cue(int sweep) {
        return ret.cues(Cue.Sweep.class).get(sweep);
    }

    /** A sweep as it is followed. */
    FollowedSweep followed(int sweep) {
        return new SweepFollower(cue(sweep), RATE).follow(ret);
    }

    /** The noise of the silence. */
    NoiseDensities noise() {
        return NoiseDensities.measure(ret).orElseThrow();
    }

    /** The response of a channel from a sweep, without harmonics. */
    Response response(int sweep, int channel) {
        return responses(List.of(cue(sweep)), null).stream()
                .filter(r -> r.channel().equals(ProgrammeReturn.channelName(channel)))
                .findFirst()
                .orElseThrow();
    }

    /** The responses of all sweeps and channels. */
    List<Response> responses() {
        return responses(
                ret.cues(Cue.Sweep.class), HarmonicFollower.followLoudest(ret).orElse(null));
    }

    private List<Response> responses(List<Cue.Sweep> sweeps, FollowedHarmonics harmonics) {
        return SweepResponses.of(
                ret,
                sweeps.stream().map(s -> new SweepFollower(s, RATE).follow(ret)).toList(),
                harmonics,
                noise().densities(),
                Leakage.NONE,
                0);
    }

    /** The truth about the response of a channel. */
    ResponseTruth truth(int channel) {
        return run.truth().response().get(channel);
    }

    /** A curve at a frequency, straight in between over the logarithm. */
    static double at(double[] hz, double[] values, double wanted) {
        int i = 0;
        while (hz[i + 1] < wanted) {
            i++;
        }
        double part = Math.log(wanted / hz[i]) / Math.log(hz[i + 1] / hz[i]);
        return values[i] * (1 - part) + values[i + 1] * part;
    }
}
