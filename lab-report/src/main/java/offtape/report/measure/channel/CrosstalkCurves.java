package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.standard.Iec61260;
import offtape.core.unit.Decibels;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.noise.NoiseDensities;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.SweepFollower;
import offtape.report.measure.tone.Complex;
import offtape.report.result.CrosstalkCurve;

/**
 * Crosstalk over frequency from sweeps on one channel alone: what of the silent channel keeps step
 * with the one that sounds, re what the silent channel returns of a sweep of its own.
 */
final class CrosstalkCurves {

    private static final double LOWEST_HZ = 50;
    private static final double HIGHEST_HZ = 16_000;
    private static final int BANDS_AN_OCTAVE = 3;

    /** Bands of the sweep that are added by phase: a twelfth of an octave. */
    private static final int TOGETHER = SweepFollower.BANDS / 12;

    /** A leak must stand this far over what chance makes, as a power ratio. */
    private static final double STANDS_OUT = 16;

    /** Room for filters and for the level of the own sweep, dB, k = 2. */
    private static final double OWN_DB = 0.1;

    private final ProgrammeReturn ret;
    private final FollowedSweep own;
    private final NoiseDensities noise;
    private final boolean swapped;

    /**
     * @param own a sweep on both channels, followed
     * @param swapped whether what is sent on one side alone returns on the other channel
     */
    CrosstalkCurves(ProgrammeReturn ret, FollowedSweep own, NoiseDensities noise, boolean swapped) {
        this.ret = ret;
        this.own = own;
        this.noise = noise;
        this.swapped = swapped;
    }

    /** A curve for each direction that a sweep on one channel alone tells. */
    List<CrosstalkCurve> measure() {
        List<CrosstalkCurve> curves = new ArrayList<>();
        curve(swapped ? ChannelSet.RIGHT : ChannelSet.LEFT, 0, 1).ifPresent(curves::add);
        curve(swapped ? ChannelSet.LEFT : ChannelSet.RIGHT, 1, 0).ifPresent(curves::add);
        return curves;
    }

    private Optional<CrosstalkCurve> curve(ChannelSet side, int from, int into) {
        return ret.cues(Cue.Sweep.class).stream()
                .filter(s -> s.channels() == side)
                .findFirst()
                .map(s -> new SweepFollower(s, ret.sheet().sampleRateHz()).follow(ret))
                .flatMap(s -> curve(s, from, into));
    }

    /** Of a sweep; none if no band has room between its ends. */
    private Optional<CrosstalkCurve> curve(FollowedSweep alone, int from, int into) {
        double low = Math.max(LOWEST_HZ, alone.frequencyHz(0) * 1.2);
        double high = Math.min(HIGHEST_HZ, alone.frequencyHz(alone.size() - 1) / 1.2);
        double[] centres =
                low > high ? new double[0] : Iec61260.bandCentresHz(low, high, BANDS_AN_OCTAVE);
        if (centres.length == 0) {
            return Optional.empty();
        }
        Double[] db = new Double[centres.length];
        Double[] uncertaintyDb = new Double[centres.length];
        double[] floorDb = new double[centres.length];
        Double[] phaseDegrees = new Double[centres.length];
        for (int i = 0; i < centres.length; i++) {
            Band band = band(alone, centres[i], from, into);
            floorDb[i] = band.floorDb();
            if (band.standsOut()) {
                db[i] = band.levelDb();
                uncertaintyDb[i] = band.uncertaintyDb();
                phaseDegrees[i] = Math.toDegrees(band.sum().phase());
            }
        }
        return Optional.of(
                new CrosstalkCurve(
                        ProgrammeReturn.channelName(from),
                        ProgrammeReturn.channelName(into),
                        centres,
                        db,
                        uncertaintyDb,
                        floorDb,
                        phaseDegrees));
    }

    /**
     * One band; powers re the silent channel's own sweep.
     *
     * @param leak power that keeps step with the sounding channel, chance included
     * @param chance what chance alone makes of it
     * @param scatter one standard deviation of the leak
     * @param sum the leak with its phase re the sounding channel, in any unit
     */
    private record Band(double leak, double chance, double scatter, Complex sum) {

        /** Where a sweep is not heard, all of it may be leak. */
        static final Band NOTHING = new Band(0, 1 / STANDS_OUT, 0, Complex.ZERO);

        boolean standsOut() {
            return leak > STANDS_OUT * chance;
        }

        double levelDb() {
            return Decibels.ofPower(leak - chance);
        }

        double uncertaintyDb() {
            return Math.hypot(OWN_DB, 2 * 4.343 * scatter / (leak - chance));
        }

        double floorDb() {
            return Math.max(-160, Decibels.ofPower(STANDS_OUT * chance + 1e-16));
        }
    }

    private Band band(FollowedSweep alone, double centreHz, int from, int into) {
        int first = alone.index(Iec61260.lowerEdgeHz(centreHz, BANDS_AN_OCTAVE));
        int last = alone.index(Iec61260.upperEdgeHz(centreHz, BANDS_AN_OCTAVE));
        double leak = 0;
        double chance = 0;
        double variance = 0;
        int groups = 0;
        Complex sum = Complex.ZERO;
        for (int start = first; start + TOGETHER <= last + 1; start += TOGETHER) {
            Band group = group(alone, start, from, into);
            if (group == Band.NOTHING) {
                continue;
            }
            leak += group.leak();
            chance += group.chance();
            variance += group.scatter() * group.scatter();
            sum = sum.plus(group.sum());
            groups++;
        }
        return groups == 0
                ? Band.NOTHING
                : new Band(leak / groups, chance / groups, Math.sqrt(variance) / groups, sum);
    }

    /** A few bands of the sweep, added by phase. */
    private Band group(FollowedSweep alone, int start, int from, int into) {
        double levels = Math.pow(10, (alone.cue().levelDb() - own.cue().levelDb()) / 10);
        int reference = own.index(alone.frequencyHz(0));
        double speed = ret.speedRatio(alone.cue().startFrame(), alone.cue().frames());
        Complex together = Complex.ZERO;
        double source = 0;
        double floor = 0;
        double heard = 0;
        double wanted = 0;
        double values = 0;
        for (int i = start; i < start + TOGETHER; i++) {
            Complex cross = new Complex(alone.crossRe(i), alone.crossIm(i));
            together = together.plus(from == 0 ? cross.conjugate() : cross);
            source += alone.power(from, i);
            heard += alone.power(into, i);
            floor +=
                    alone.noisePower(
                            into, i, noise == null ? null : noise.densities()[into], speed);
            values += alone.values(i);
            wanted += levels * ownPower(i + reference, into);
        }
        if (!(wanted > 0 && source > 0)) {
            return Band.NOTHING;
        }
        double coherent = together.size() * together.size() / source;
        double byChance = Math.max(floor, heard - coherent) / Math.max(1, values);
        return new Band(
                coherent / wanted,
                byChance / wanted,
                Math.sqrt(2 * coherent * byChance) / wanted,
                together.times(1 / source));
    }

    /** Power of the silent channel's own sweep, the noise taken out. */
    private double ownPower(int i, int channel) {
        if (i < 0 || i >= own.size()) {
            return 0;
        }
        double speed = ret.speedRatio(own.cue().startFrame(), own.cue().frames());
        double floor =
                own.noisePower(
                        channel, i, noise == null ? null : noise.densities()[channel], speed);
        return Math.max(own.power(channel, i) - floor, 1e-3 * own.power(channel, i));
    }
}
