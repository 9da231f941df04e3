package offtape.report.measure;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.machine.MachineRun;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.reference.ReferenceTable;

/** The true deviation of a simulated return, and readings of it computed apart from the meter. */
final class DeviationTruth {

    private static final double RATE_HZ = 1000;

    private DeviationTruth() {}

    /** True deviation over the speed tone, percent, 1000 values a second. */
    static double[] overSpeedTone(MachineRun run, CueSheet sheet) {
        return overSpeedTone(run, sheet, run.timeMap()::returnDeviation);
    }

    /** The same of the transport itself. */
    static double[] ownOverSpeedTone(MachineRun run, CueSheet sheet) {
        return overSpeedTone(run, sheet, run.timeMap()::transportDeviation);
    }

    private static double[] overSpeedTone(
            MachineRun run, CueSheet sheet, DoubleUnaryOperator deviation) {
        Cue.Tone tone =
                sheet.cues(Cue.Tone.class)
                        .filter(t -> t.id().equals("speed"))
                        .findFirst()
                        .orElseThrow();
        double from = run.timeMap().returnSeconds(sheet.seconds(tone.startFrame())) + 0.17;
        double to = run.timeMap().returnSeconds(sheet.seconds(tone.endFrame())) - 0.17;
        double[] percent = new double[(int) ((to - from) * RATE_HZ)];
        for (int i = 0; i < percent.length; i++) {
            percent[i] = 100 * deviation.applyAsDouble(from + i / RATE_HZ);
        }
        return percent;
    }

    /**
     * Weighted rms in the frequency domain, the table of IEC 60386 taken straight in decibels over
     * the logarithm of frequency between its rows, over the stretch that the meter reads.
     */
    static double weightedRms(double[] percent) {
        double mean = Arrays.stream(percent).average().orElse(0);
        double[] x = Arrays.stream(percent).map(p -> p - mean).toArray();
        int n = RealFft.nextPowerOfTwo(2 * x.length);
        RealFft fft = RealFft.ofSize(n);
        Spectrum s = fft.forward(x);
        ReferenceTable table = ReferenceTable.load("wf-weighting-iec60386");
        double[] hz = table.numbers("frequency");
        double[] db = table.numbers("weighting");
        double bin = s.binHz(RATE_HZ);
        double[] w = fft.inverse(s.times(k -> Math.pow(10, weightingDb(hz, db, k * bin) / 20)));
        int from = (int) (3 * RATE_HZ);
        int to = x.length - (int) (1.5 * RATE_HZ);
        double sum = Arrays.stream(w, from, to).map(v -> v * v).sum();
        return Math.sqrt(sum / (to - from));
    }

    private static double weightingDb(double[] f, double[] db, double hz) {
        if (hz < f[0]) {
            return hz <= 0 ? -400 : db[0] + 60 * Math.log10(hz / f[0]);
        }
        if (hz >= f[f.length - 1]) {
            return db[f.length - 1] - 20 * Math.log10(hz / f[f.length - 1]);
        }
        int i = 0;
        while (f[i + 1] <= hz) {
            i++;
        }
        double part = Math.log(hz / f[i]) / Math.log(f[i + 1] / f[i]);
        return db[i] * (1 - part) + db[i + 1] * part;
    }
}
