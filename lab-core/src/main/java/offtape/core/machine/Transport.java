package offtape.core.machine;

import java.util.SplittableRandom;
import offtape.core.dsp.RealFft;
import offtape.core.fault.UnusableInputException;
import offtape.core.machine.spec.ComponentSpec;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.machine.spec.RandomBandSpec;
import offtape.core.machine.spec.ReelSpec;
import offtape.core.machine.spec.TransportSpec;
import offtape.core.text.Sentences;

/**
 * Tabulates a transport's motion for one pass. Rates up to 500 Hz share one table of at least 16
 * points a period; what scrapes faster has a periodic table of its own. 16 points a period leave an
 * error of (2π/16)⁴/384 = 6e-5 of that line at most.
 */
final class Transport {

    private static final Sentences SAID = Sentences.near(Transport.class);

    private static final double LEAST_RATE_HZ = 1600;
    private static final int POINTS_PER_PERIOD = 16;
    private static final int MOST_POINTS = 1 << 24;
    private static final int MOST_SLOW_POINTS = 1 << 21;
    private static final int MOST_FAST_POINTS = 1 << 20;
    private static final double MOST_DEVIATION = 0.5;

    /** Shares of a period by which replays of a recorded motion lie apart, none near another. */
    private static final double GOLDEN = (3 - Math.sqrt(5)) / 2;

    private final TransportSpec spec;
    private final double tapeSpeedMmPerS;
    private final Pass pass;
    private final int replay;
    private final SplittableRandom seeds;
    private final double from;
    private final double rateHz;
    private final double[] displacement;
    private final double[] deviation;

    /** Which pass of the tape is meant. */
    enum Pass {
        /** The pass that is heard. */
        READ,
        /** The pass before it, which wrote the tape. */
        WRITE
    }

    private Transport(MachineSpec machine, Pass pass, double from, double to) {
        this.spec = machine.transport();
        this.tapeSpeedMmPerS = machine.tapeSpeedMmPerS();
        this.pass = pass;
        this.replay = machine.replay();
        this.seeds = Seeds.transport(machine, pass);
        this.from = from;
        this.rateHz = rateHz();
        int points = points(to - from, rateHz);
        this.displacement = new double[points];
        this.deviation = new double[points];
    }

    /**
     * The motion of one pass.
     *
     * @param from start of the stretch that will be asked for, seconds
     * @param to its end
     * @throws UnusableInputException if the deviations add up to more than half the speed, or the
     *     stretch is too long to tabulate
     */
    static Motion motion(MachineSpec machine, Pass pass, double from, double to) {
        if (machine.transport().equals(TransportSpec.PERFECT)) {
            return Motion.PERFECT;
        }
        return new Transport(machine, pass, from, to).tabulated();
    }

    private static int points(double seconds, double rateHz) {
        double points = Math.ceil(seconds * rateHz) + 2;
        if (points > MOST_POINTS) {
            throw new UnusableInputException(
                    SAID.say("transport.too-long", MOST_POINTS / rateHz / 60));
        }
        return (int) points;
    }

    private Motion tabulated() {
        addSteady();
        for (ComponentSpec component : spec.components()) {
            addComponent(component, seeds.nextDouble());
        }
        if (spec.reels() != null) {
            double thickness = spec.reels().tapeThicknessMicrometres() / 1000;
            addReel(spec.reels().supply(), -thickness, seeds.nextDouble());
            addReel(spec.reels().takeUp(), thickness, seeds.nextDouble());
        }
        addRandom(spec.randomFlutter(), seeds.nextLong());
        addMeasured();
        HermiteTable fast = scrape(seeds.nextLong());
        addRandom(spec.belt().wow(), seeds.nextLong());
        HermiteTable slow = new HermiteTable(from, rateHz, displacement, deviation, false);
        return checked(new Motion(slow, fast));
    }

    private static Motion checked(Motion motion) {
        if (!(motion.largestDeviation() < MOST_DEVIATION)) {
            throw new UnusableInputException(SAID.say("transport.too-uneven"));
        }
        return motion;
    }

    private double rateHz() {
        double highest = spec.randomFlutter() == null ? 0 : spec.randomFlutter().highHz();
        for (ComponentSpec component : spec.components()) {
            highest = Math.max(highest, component.highestRateHz(tapeSpeedMmPerS));
        }
        return Math.max(LEAST_RATE_HZ, POINTS_PER_PERIOD * highest);
    }

    private double seconds(int i) {
        return from + i / rateHz;
    }

    private void addSteady() {
        double constant = spec.constantPercent() / 100;
        double perSecond = spec.changePercentPerMinute() / 100 / 60;
        for (int i = 0; i < displacement.length; i++) {
            double u = seconds(i);
            displacement[i] += u * (constant + perSecond * u / 2);
            deviation[i] += constant + perSecond * u;
        }
    }

    private void addComponent(ComponentSpec component, double drawn) {
        double omega = 2 * Math.PI * component.rateHz(tapeSpeedMmPerS);
        double phase = phase(component, drawn);
        for (int n = 1; n <= component.harmonics().size(); n++) {
            addLine(n * omega, component.peakPercent(n) / 100, n * phase);
        }
    }

    // δ = a·sin(ωu + φ), ξ = −a/ω·cos(ωu + φ).
    private void addLine(double omega, double peak, double phase) {
        for (int i = 0; i < displacement.length; i++) {
            double angle = omega * seconds(i) + phase;
            displacement[i] -= peak / omega * Math.cos(angle);
            deviation[i] += peak * Math.sin(angle);
        }
    }

    private double phase(ComponentSpec component, double drawn) {
        if (pass == Pass.READ) {
            return replay == 1 ? Math.toRadians(component.phaseDegrees()) : 2 * Math.PI * drawn;
        }
        return component.recordPhaseDegrees() == null
                ? 2 * Math.PI * drawn
                : Math.toRadians(component.recordPhaseDegrees());
    }

    // The pack's area changes by the tape's thickness times its length: r² = r0² ± h·x/π. The angle
    // turned is ∫dx/r = ±2π/h·(r − r0), in every replay the same: it goes with the tape. The line's
    // displacement has no closed form; the trapezoidal rule errs by (ω/rate)²/12, below 1e-5 for
    // any
    // reel.
    private void addReel(ReelSpec reel, double thicknessMm, double drawn) {
        if (reel == null) {
            return;
        }
        double phase =
                pass == Pass.READ ? Math.toRadians(reel.phaseDegrees()) : 2 * Math.PI * drawn;
        double peak = reel.peakPercent() / 100;
        double sum = 0;
        double last = 0;
        for (int i = 0; i < displacement.length; i++) {
            double radius = reelRadius(reel, thicknessMm, seconds(i));
            double angle = 2 * Math.PI / thicknessMm * (radius - reel.radiusMm()) + phase;
            double value = peak * Math.sin(angle);
            sum += i == 0 ? 0 : (last + value) / 2 / rateHz;
            last = value;
            displacement[i] += sum;
            deviation[i] += value;
        }
    }

    private double reelRadius(ReelSpec reel, double thicknessMm, double seconds) {
        double squared =
                reel.radiusMm() * reel.radiusMm()
                        + thicknessMm * tapeSpeedMmPerS * seconds / Math.PI;
        if (squared < 1) {
            throw new UnusableInputException(SAID.say("transport.reel-empty"));
        }
        return Math.sqrt(squared);
    }

    private void addRandom(RandomBandSpec band, long seed) {
        if (band == null || band.rmsPercent() == 0) {
            return;
        }
        int points = points(band, rateHz, displacement.length, MOST_SLOW_POINTS);
        BandNoise noise = BandNoise.of(band, seed, rateHz, points);
        for (int i = 0; i < displacement.length; i++) {
            displacement[i] += noise.displacement()[i % points];
            deviation[i] += noise.deviation()[i % points];
        }
    }

    private HermiteTable scrape(long seed) {
        RandomBandSpec band = spec.scrapeFlutter();
        if (band == null || band.rmsPercent() == 0) {
            return null;
        }
        double rate = POINTS_PER_PERIOD * band.highHz();
        double wanted = displacement.length / rateHz * rate;
        int points = points(band, rate, wanted, MOST_FAST_POINTS);
        BandNoise noise = BandNoise.of(band, seed, rate, points);
        return new HermiteTable(from, rate, noise.displacement(), noise.deviation(), true);
    }

    // At least 50 independent lines in the band, and no repetition within the stretch, as far as
    // memory allows.
    private static int points(RandomBandSpec band, double rate, double wanted, int most) {
        double forLines = 50 * rate / (band.highHz() - band.lowHz());
        return RealFft.nextPowerOfTwo((int) Math.min(most, Math.max(wanted, forLines)));
    }

    private void addMeasured() {
        if (spec.motion() == null) {
            return;
        }
        MeasuredMotion measured = MeasuredMotion.of(spec.motion());
        double share = pass == Pass.READ ? (replay - 1) * GOLDEN % 1 : 0.5;
        double shift = share * measured.periodSeconds();
        for (int i = 0; i < displacement.length; i++) {
            displacement[i] += measured.displacement(seconds(i) + shift);
            deviation[i] += measured.deviation(seconds(i) + shift);
        }
    }
}
