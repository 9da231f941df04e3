package offtape.report.locate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.dsp.RealFft;
import offtape.core.dsp.Spectrum;
import offtape.core.fault.Background;

/**
 * Finds a programme in a recording by its {@link SpectralTrace}, over place and speed together: all
 * places of one speed at once by a transform, speed after speed.
 */
final class CoarseSearch {

    /**
     * A place and a speed at which the recording resembles the programme.
     *
     * @param offsetSeconds where the programme begins in the recording; may be negative
     * @param stretch length in the recording over length of the programme
     * @param likeness 1 if every sounding moment of the programme is there and has the colour it
     *     should, 0 if none
     */
    record Match(double offsetSeconds, double stretch, double likeness) {

        /** Matches nearer than this in both are the same one. */
        private static final double SAME_S = 1;

        private static final double SAME_SPEED = 0.1;

        /**
         * Whether another match is but a neighbour of this one, in speed and in where it has the
         * middle of the programme.
         *
         * @param programmeSeconds length of the programme
         */
        boolean isSame(Match other, double programmeSeconds) {
            double middle = programmeSeconds / 2;
            double apart = offsetSeconds - other.offsetSeconds + middle * (stretch - other.stretch);
            return Math.abs(Math.log(stretch / other.stretch)) < SAME_SPEED
                    && Math.abs(apart) < SAME_S + SAME_SPEED * middle;
        }
    }

    private static final double STEP = 0.004;

    private final SpectralTrace programme;
    private final SpectralTrace recording;
    private final double longest;

    /**
     * Prepares a search.
     *
     * @param programme without its silence
     * @param recording with vectors as far apart
     */
    CoarseSearch(SpectralTrace programme, SpectralTrace recording) {
        this.programme = programme;
        this.recording = recording;
        this.longest = programme.hops();
    }

    /**
     * The best matches, one a speed, of different speed or place, the most like first.
     *
     * @param lowest smallest stretch that is tried
     * @param highest largest stretch
     * @param count how many at most
     */
    List<Match> best(double lowest, double highest, int count) {
        Heard heard = Heard.of(recording, (int) (longest * highest) + 2);
        int steps = (int) Math.ceil(Math.log(highest / lowest) / STEP);
        List<Double> stretches =
                IntStream.rangeClosed(0, steps)
                        .mapToObj(i -> lowest * Math.pow(highest / lowest, (double) i / steps))
                        .toList();
        List<Match> all = Background.each(stretches, stretch -> at(heard, stretch));
        double seconds = longest * programme.hopSeconds();
        List<Match> kept = new ArrayList<>();
        all.stream()
                .sorted(Comparator.comparingDouble(Match::likeness).reversed())
                .filter(m -> kept.stream().noneMatch(k -> k.isSame(m, seconds)))
                .limit(count)
                .forEach(kept::add);
        return kept;
    }

    private Match at(Heard heard, double stretch) {
        SpectralTrace wanted = programme.stretched(stretch);
        double[] sum = heard.correlation(wanted);
        int bestLag = 0;
        for (int lag = -wanted.hops() + 1; lag < recording.hops(); lag++) {
            if (sum[Math.floorMod(lag, sum.length)] > sum[Math.floorMod(bestLag, sum.length)]) {
                bestLag = lag;
            }
        }
        double most = sum[Math.floorMod(bestLag, sum.length)];
        return new Match(
                bestLag * recording.hopSeconds(),
                stretch,
                most / Math.max(1, wanted.sounding(0, wanted.hops())));
    }

    /**
     * How like the programme's beginning the recording is, by place.
     *
     * @param beginning the vectors that are sought
     * @return one value a vector of the recording
     */
    double[] likenessOfBeginning(SpectralTrace beginning, double stretch) {
        SpectralTrace wanted = beginning.stretched(stretch);
        double[] sum = Heard.of(recording, wanted.hops()).correlation(wanted);
        double[] out = new double[recording.hops()];
        int sounding = Math.max(1, wanted.sounding(0, wanted.hops()));
        for (int lag = 0; lag < out.length; lag++) {
            out[lag] = sum[lag] / sounding;
        }
        return out;
    }

    /** The recording's bands, transformed with room for a programme of so many vectors. */
    private record Heard(RealFft fft, Spectrum[] bands) {

        static Heard of(SpectralTrace recording, int room) {
            RealFft fft = RealFft.ofSize(RealFft.nextPowerOfTwo(recording.hops() + room));
            Spectrum[] bands = new Spectrum[recording.bandCount()];
            for (int b = 0; b < bands.length; b++) {
                bands[b] = fft.forward(recording.band(b));
            }
            return new Heard(fft, bands);
        }

        double[] correlation(SpectralTrace wanted) {
            double[] re = new double[fft.size() / 2 + 1];
            double[] im = new double[re.length];
            for (int b = 0; b < bands.length; b++) {
                Spectrum product = bands[b].timesConjugate(fft.forward(wanted.band(b)));
                for (int k = 0; k < re.length; k++) {
                    re[k] += product.re(k);
                    im[k] += product.im(k);
                }
            }
            return fft.inverse(Spectrum.of(fft.size(), re, im));
        }
    }
}
