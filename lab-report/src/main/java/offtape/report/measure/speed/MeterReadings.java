package offtape.report.measure.speed;

import offtape.core.standard.FlutterBand;
import offtape.core.unit.Quantity;

/** Readings of a wow-and-flutter meter as figures: how far noise and the standard leave them. */
final class MeterReadings {

    private static final String UNIT = "%";

    /** Share of an rms reading that our own filters may err by, k = 2. */
    private static final double OWN_SHARE = 0.0005;

    /** Share that the classes of the two-sigma statistic and a detector's start may make of it. */
    private static final double OWN_STATISTIC_SHARE = 0.002;

    private static final double OWN_PERCENT = 2e-5;

    /** Width of the noise that is taken for speed: it rises up to the end of the band. */
    private static final double NOISE_HZ = 100;

    /** What a peak sees of it at a time: so long its detector gathers. */
    private static final double GATHERED_S = 0.05;

    private final SpeedReader reader;
    private final NoiseFloor floor;
    private final MeterDoubt doubt;
    private final double seconds;

    /**
     * Readings of a tone.
     *
     * @param reader after its last value
     * @param seconds length of the tone
     */
    MeterReadings(SpeedReader reader, NoiseFloor floor, MeterDoubt doubt, double seconds) {
        this.reader = reader;
        this.floor = floor;
        this.doubt = doubt;
        this.seconds = seconds;
    }

    /** The highest weighted reading of the whole or of a part. */
    Quantity weightedPeak(double value) {
        return peak(value, reader.weightedPeakApart(), FlutterBand.WEIGHTED, floor.weightedPeak());
    }

    /** The highest reading without weighting. */
    Quantity unweightedPeak() {
        double value = reader.unweightedPeak();
        double apart = reader.unweightedPeakApart();
        return peak(value, apart, FlutterBand.UNWEIGHTED, floor.unweightedPeak());
    }

    /** Root mean square in a band. */
    Quantity rms(FlutterBand band) {
        return rms(reader.rms(band), band);
    }

    /** A root mean square that was read. */
    Quantity rms(double value, FlutterBand band) {
        return steady(value, OWN_SHARE, band);
    }

    /** The weighted value that is exceeded 4.55 % of the time. */
    Quantity twoSigma() {
        return steady(reader.twoSigma(), OWN_STATISTIC_SHARE, FlutterBand.WEIGHTED);
    }

    private Quantity steady(double value, double own, FlutterBand band) {
        double noise = floor.rms(band);
        double chance = 2 * noise / Math.sqrt(2 * NOISE_HZ * seconds);
        double share = Math.hypot(own, doubt.share(band));
        return reading(value, share, added(value, noise), chance);
    }

    /**
     * A reading of the worst moment.
     *
     * @param apart how far other detectors read from ours, as a share
     */
    private Quantity peak(double value, double apart, FlutterBand band, double noisePeak) {
        double detector = Math.hypot(OWN_STATISTIC_SHARE, 2 / Math.sqrt(3) * apart);
        double share = Math.hypot(doubt.share(band), detector);
        double chance = floor.rms(band) / Math.sqrt(2 * NOISE_HZ * GATHERED_S);
        return reading(value, share, added(value, noisePeak), chance);
    }

    /** Noise adds to a reading as a power: this much of it is the recording's. */
    private static double added(double value, double noise) {
        return value - Math.sqrt(Math.max(0, value * value - noise * noise));
    }

    private static Quantity reading(double value, double share, double added, double chance) {
        double uncertainty = Math.hypot(share * value, chance) + added + OWN_PERCENT;
        return Quantity.known(value, UNIT, uncertainty);
    }
}
