package offtape.report.measure.processing;

import java.util.Arrays;
import java.util.Optional;
import offtape.core.dsp.PowerDensity;
import offtape.core.text.Sentences;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.result.HealthNote;

/**
 * A frequency above which the noise of silence is suddenly gone: lossy coding leaves out what it
 * takes for inaudible, and a stage of a lower sample rate cannot hold it. Hiss is born behind the
 * heads and ends as gently as amplifiers do: a filter of eighth order (48 dB an octave) takes off
 * less than 8 dB from half a kilohertz below to one above 16 kHz.
 */
final class BandWall {

    private static final Sentences SAID = Sentences.near(BandWall.class);

    private static final double LOWEST_HZ = 7000;

    /** Converters and changes of rate have their own edge at 20 kHz and at 0.45 of the rate. */
    private static final double HIGHEST_HZ = 20_600;

    private static final double OF_RATE = 0.45;

    private static final double BAND_HZ = 200;

    /** Bands below and above a wall that are compared, and those of the wall itself between. */
    private static final int BELOW = 6;

    private static final int WITHIN = 3;
    private static final int FEWEST_ABOVE = 4;

    /** So much the noise must fall there, dB. */
    private static final double FALL_DB = 14;

    /** Noise fainter than this is the file's own rounding, dB re full scale squared per hertz. */
    private static final double FAINTEST_DB = -160;

    private final double[] bandDb;

    private BandWall(PowerDensity density, double endHz) {
        this.bandDb = new double[(int) (endHz / BAND_HZ)];
        for (int b = 0; b < bandDb.length; b++) {
            double power = density.power(b * BAND_HZ, (b + 1) * BAND_HZ, hz -> 1);
            bandDb[b] = 10 * Math.log10(Math.max(1e-30, power / BAND_HZ));
        }
    }

    /**
     * The warning, if the noise of every channel that has some ends so.
     *
     * @param noise of the silence, or null if there is none
     */
    static Optional<HealthNote> in(NoiseDensities noise, int sampleRateHz) {
        if (noise == null) {
            return Optional.empty();
        }
        double[] walls =
                Arrays.stream(noise.densities())
                        .map(d -> new BandWall(d, sampleRateHz / 2.0))
                        .filter(BandWall::isHeard)
                        .mapToDouble(w -> w.hz(OF_RATE * sampleRateHz))
                        .toArray();
        boolean all = walls.length > 0 && Arrays.stream(walls).allMatch(Double::isFinite);
        return all ? Optional.of(note(Arrays.stream(walls).min().orElseThrow())) : Optional.empty();
    }

    private boolean isHeard() {
        int from = (int) (LOWEST_HZ / BAND_HZ) - BELOW;
        return from + BELOW <= bandDb.length && median(from, from + BELOW) > FAINTEST_DB;
    }

    /** Where the wall is; NaN if there is none. */
    private double hz(double highestHz) {
        double most = 0;
        double at = Double.NaN;
        for (int b = (int) (LOWEST_HZ / BAND_HZ);
                b * BAND_HZ <= Math.min(HIGHEST_HZ, highestHz);
                b++) {
            double below = median(b - BELOW, b);
            int above = b + WITHIN;
            if (below < FAINTEST_DB || above + FEWEST_ABOVE > bandDb.length) {
                continue;
            }
            double loudest = Arrays.stream(bandDb, above, bandDb.length).max().orElseThrow();
            double fall = below - median(above, bandDb.length);
            if (fall > FALL_DB && below - loudest > FALL_DB / 2 && fall > most) {
                most = fall;
                at = edge(b - BELOW, below - fall / 2);
            }
        }
        return at;
    }

    /**
     * Where the noise has lost half of the decibels it loses, from a band on that lies below the
     * wall: the upper half of the bands held against those above may lie behind it.
     */
    private double edge(int from, double halfDb) {
        int band = from;
        while (bandDb[band] > halfDb) {
            band++;
        }
        return band * BAND_HZ;
    }

    private double median(int from, int to) {
        double[] sorted = Arrays.copyOfRange(bandDb, from, to);
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static HealthNote note(double hz) {
        return new HealthNote("warning", "band-ends", SAID.say("band-ends", hz / 1000));
    }
}
