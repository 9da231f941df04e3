package offtape.report.measure.speed;

import offtape.core.standard.FlutterBand;
import offtape.core.unit.Quantity;

/** Readings of a wow-and-flutter meter as figures: how far noise and the standard leave them. */
final class MeterReadings {

    private static final String UNIT = "%";

    /** Share of a modulation reading that our own filters may err by, k = 2. */
    private static final double OWN_SHARE = 0.002;

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
        double apart = apart(reader.otherWeightedPeak(), reader.weightedPeak());
        return peak(value, apart, FlutterBand.WEIGHTED, floor.weightedPeak());
    }

    /** The highest reading without weighting. */
    Quantity unweightedPeak() {
        double value = reader.unweightedPeak();
        double apart = apart(reader.otherUnweightedPeak(), value);
        return peak(value, apart, FlutterBand.UNWEIGHTED, floor.unweightedPeak());
    }

    private static double apart(double other, double ours) {
        return ours > 0 ? other / ours - 1 : 0;
    }

    /** Root mean square in a band. */
    Quantity rms(FlutterBand band) {
        return steady(reader.rms(band), band);
    }

    /** A reading of the whole stretch. */
    Quantity steady(double value, FlutterBand band) {
        double noise = floor.rms(band);
        double chance = 2 * noise / Math.sqrt(2 * NOISE_HZ * seconds);
        return reading(value, doubt.share(band), added(value, noise), chance);
    }

    /**
     * A reading of the worst moment.
     *
     * @param apart how far another detector reads from ours, as a share
     */
    private Quantity peak(double value, double apart, FlutterBand band, double noisePeak) {
        double share = Math.hypot(doubt.share(band), 2 / Math.sqrt(3) * apart);
        double chance = floor.rms(band) / Math.sqrt(2 * NOISE_HZ * GATHERED_S);
        return reading(value, share, added(value, noisePeak), chance);
    }

    /** Noise adds to a reading as a power: this much of it is the recording's. */
    private static double added(double value, double noise) {
        return value - Math.sqrt(Math.max(0, value * value - noise * noise));
    }

    private static Quantity reading(double value, double share, double added, double chance) {
        double own = Math.hypot(OWN_SHARE, share) * value;
        return Quantity.known(value, UNIT, Math.hypot(own, chance) + added + OWN_PERCENT);
    }
}
