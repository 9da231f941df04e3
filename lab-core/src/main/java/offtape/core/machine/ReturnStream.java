package offtape.core.machine;

import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.machine.spec.CrosstalkSpec;
import offtape.core.machine.spec.LeadInSpec;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.ModulationNoiseSpec;

/** The replay side at work: reads the tape along the time map, block after block. */
final class ReturnStream {

    private static final int BLOCK = 4096;

    private final MachineRun run;
    private final Tape tape;
    private final List<ReplayChannel> channels;
    private final Hum hum;
    private final double leftToRight;
    private final double rightToLeft;
    private final double[] programmeSeconds = new double[BLOCK];

    ReturnStream(MachineRun run, AudioSource audio) {
        MachineSpec spec = run.spec();
        this.run = run;
        double first = run.timeMap().programmeSeconds(0) * run.programmeRateHz();
        LeadInSpec leadIn = spec.recorder().leadIn();
        this.tape =
                new Tape(
                        audio,
                        leadIn,
                        run.referencePeak(),
                        run.chains(),
                        fluctuations(run),
                        run.hasTape() ? spec.residue() : null,
                        first);
        this.channels = IntStream.range(0, 2).mapToObj(c -> new ReplayChannel(run, c)).toList();
        this.hum =
                Hum.of(
                        run.hasTape() ? spec.hum() : null,
                        Seeds.hum(spec),
                        run.sampleRateHz(),
                        run.referencePeak());
        CrosstalkSpec crosstalk = run.hasTape() ? spec.crosstalk() : CrosstalkSpec.NONE;
        this.leftToRight = ratio(crosstalk.leftToRightDb());
        this.rightToLeft = ratio(crosstalk.rightToLeftDb());
    }

    private static LevelFluctuation[] fluctuations(MachineRun run) {
        MachineSpec spec = run.spec();
        LevelFluctuation[] both = new LevelFluctuation[2];
        for (int c = 0; c < 2 && run.hasTape(); c++) {
            ModulationNoiseSpec noise = Bias.of(spec, c).modulation(spec.modulationNoise());
            both[c] = LevelFluctuation.of(noise, spec.seed(), c, run.programmeRateHz());
        }
        return both;
    }

    void writeAll(FrameSink out) {
        double[][] block = new double[2][BLOCK];
        long frames = run.frames();
        for (long frame = 0; frame < frames; frame += BLOCK) {
            int count = (int) Math.min(BLOCK, frames - frame);
            fill(block, frame, count);
            out.write(block, count);
        }
    }

    private void fill(double[][] block, long frame, int count) {
        run.timeMap().programmeSeconds(frame, run.sampleRateHz(), programmeSeconds, count);
        readTracks(block, count);
        leak(block, count);
        for (int c = 0; c < 2; c++) {
            channels.get(c).amplify(block[c], programmeSeconds, count);
        }
        hum.add(block, frame, count);
        for (int c = 0; c < 2; c++) {
            channels.get(c).addTapeNoise(block[c], count);
        }
        if (run.swapped()) {
            double[] left = block[0];
            block[0] = block[1];
            block[1] = left;
        }
        for (int c = 0; c < 2; c++) {
            channels.get(c).record(block[c], count);
        }
    }

    private void readTracks(double[][] block, int count) {
        double places = (double) Tape.OVERSAMPLING * run.programmeRateHz();
        double[] late = late(count, places);
        double margin = 1;
        for (double l : late) {
            margin = Math.max(margin, Math.abs(l) + 1);
        }
        tape.write(
                programmeSeconds[0] * places - margin,
                programmeSeconds[count - 1] * places + margin);
        for (int i = 0; i < count; i++) {
            double place = programmeSeconds[i] * places;
            block[0][i] = tape.read(0, place + late[i]);
            block[1][i] = tape.read(1, place - late[i]);
        }
    }

    /** Half the delay between the channels at each frame, in places of the tape. */
    private double[] late(int count, double places) {
        double[] late = new double[count];
        boolean wanders = run.azimuthWanders();
        double mean = run.azimuthDelaySeconds();
        for (int i = 0; i < count; i++) {
            double delay = wanders ? run.azimuthDelaySeconds(programmeSeconds[i]) : mean;
            late[i] = delay / 2 * places;
        }
        return late;
    }

    private void leak(double[][] block, int count) {
        if (leftToRight == 0 && rightToLeft == 0) {
            return;
        }
        for (int i = 0; i < count; i++) {
            double left = block[0][i];
            double right = block[1][i];
            block[0][i] = left + rightToLeft * right;
            block[1][i] = right + leftToRight * left;
        }
    }

    private static double ratio(Double levelDb) {
        return levelDb == null ? 0 : Math.pow(10, levelDb / 20);
    }
}
