package offtape.report.locate;

import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;

/** Finds a programme in a recording by its {@link SpectralTrace}, over place and speed together. */
final class CoarseSearch {

    /**
     * The best place.
     *
     * @param offsetSeconds where the programme begins in the recording; may be negative
     * @param stretch length in the recording over length of the programme
     * @param likeness 1 if every sounding moment has the colour it should, 0 if none
     */
    record Match(double offsetSeconds, double stretch, double likeness) {}

    private static final double COARSE_STEP = 0.004;
    private static final double FINE_STEP = 0.0005;

    private final SpectralTrace programme;
    private final SpectralTrace recording;
    private final RealFft fft;
    private final Spectrum[] recordingBands;

    CoarseSearch(SpectralTrace programme, SpectralTrace recording) {
        this.programme = programme.withoutSilence();
        this.recording = recording;
        int length = recording.hops() + (int) (2.2 * programme.hops()) + 2;
        this.fft = RealFft.ofSize(RealFft.nextPowerOfTwo(length));
        this.recordingBands = new Spectrum[recording.bandCount()];
        for (int b = 0; b < recordingBands.length; b++) {
            recordingBands[b] = fft.forward(recording.band(b));
        }
    }

    /**
     * The best match among speeds around a ratio.
     *
     * @param stretch middle of the search
     * @param range how far to either side, as a share of {@code stretch}
     */
    Match best(double stretch, double range) {
        Match best = scan(stretch, range, COARSE_STEP);
        return scan(best.stretch(), COARSE_STEP, FINE_STEP);
    }

    private Match scan(double stretch, double range, double step) {
        int steps = (int) Math.round(range / step);
        Match best = new Match(0, stretch, -1);
        for (int i = -steps; i <= steps; i++) {
            Match match = at(stretch * (1 + i * step));
            if (match.likeness() > best.likeness()) {
                best = match;
            }
        }
        return best;
    }

    private Match at(double stretch) {
        SpectralTrace wanted = programme.stretched(stretch);
        double[] sum = correlation(wanted);
        int n = sum.length;
        int bestLag = 0;
        for (int lag = -wanted.hops() + 1; lag < recording.hops(); lag++) {
            if (sum[Math.floorMod(lag, n)] > sum[Math.floorMod(bestLag, n)]) {
                bestLag = lag;
            }
        }
        int sounding = wanted.sounding(-bestLag, recording.hops() - bestLag);
        int least = wanted.sounding(0, wanted.hops()) / 4;
        double likeness = sum[Math.floorMod(bestLag, n)] / Math.max(1, Math.max(least, sounding));
        return new Match(bestLag * SpectralTrace.HOP_S, stretch, likeness);
    }

    private double[] correlation(SpectralTrace wanted) {
        double[] re = new double[fft.size() / 2 + 1];
        double[] im = new double[re.length];
        for (int b = 0; b < recordingBands.length; b++) {
            Spectrum product = recordingBands[b].timesConjugate(fft.forward(wanted.band(b)));
            for (int k = 0; k < re.length; k++) {
                re[k] += product.re(k);
                im[k] += product.im(k);
            }
        }
        return fft.inverse(Spectrum.of(fft.size(), re, im));
    }
}
