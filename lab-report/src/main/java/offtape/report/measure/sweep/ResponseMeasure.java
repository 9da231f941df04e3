package offtape.report.measure.sweep;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import offtape.core.dsp.PowerDensity;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.result.Response;

/**
 * Frequency response of one channel from a followed sweep: power returned over power sent in each
 * band, the noise's share taken out, smoothed by a local parabola a sixth of an octave wide, 0 dB
 * at 1 kHz. Frequencies are those of the programme, as with a calibration tape.
 */
public final class ResponseMeasure {

    private static final Sentences SAID = Sentences.near(ResponseMeasure.class);

    private static final double REACH_OCTAVES = 1.0 / 12;
    private static final int GRID = 24;
    private static final double RIPPLE_FROM_HZ = 63;
    private static final double RIPPLE_TO_HZ = 8000;

    /** What remains of filters, fades and interpolation on a clean path, dB, k = 2. */
    private static final double OWN_UNCERTAINTY_DB = 0.006;

    /**
     * What is left of the lag at a slope ({@link SweepLag}), for each dB an octave, over the cycles
     * in which the sweep grows by the factor e, dB, k = 2; more where its start still rings.
     */
    private static final double LAG_DB = 0.1;

    /**
     * The ringing of a sweep's start at the frequency where it starts, falling as 1/f, dB, k = 2.
     */
    private static final double RINGING_DB = 0.03;

    private static final double LAG_AT_START_DB = 0.4;
    private static final double START_SHARE = 1.5;

    private static final double DB_A_NEPER = 20 / Math.log(10);

    private final FollowedSweep sweep;
    private final int channel;
    private final double unsteadiness;
    private final double[] octaves;
    private final double[] levelDb;

    /** Variance that noise gives a level where one independent value is behind it, dB². */
    private final double[] noiseDb2;

    /**
     * Prepares the curve of one channel.
     *
     * @param noise density of the noise on that channel, or null if unknown
     * @param leakage what the channel hears of the other one, which is taken out
     * @param unsteadiness root mean square of the speed about its mean, a share: at a steep place
     *     the response is that of a frequency a little off
     */
    public ResponseMeasure(
            FollowedSweep sweep,
            int channel,
            PowerDensity noise,
            double speedRatio,
            Leakage leakage,
            double unsteadiness) {
        this.sweep = sweep;
        this.channel = channel;
        this.unsteadiness = unsteadiness;
        this.octaves = new double[sweep.size()];
        this.levelDb = new double[sweep.size()];
        this.noiseDb2 = new double[sweep.size()];
        for (int i = 0; i < octaves.length; i++) {
            octaves[i] = Math.log(sweep.frequencyHz(i) / 1000) / Math.log(2);
            double power = sweep.power(channel, i);
            double floor = sweep.noisePower(channel, i, noise, speedRatio);
            double own = sweep.powerWithout(leakage, channel, i) - floor;
            double sent = sweep.programmePower(i);
            boolean heard = own > 0.3 * power && sent > 0;
            levelDb[i] = heard ? Decibels.ofPower(own / sent) : Double.NaN;
            noiseDb2[i] = heard ? DB_A_NEPER * DB_A_NEPER * floor / own / 2 : 0;
        }
    }

    /**
     * The response, or null if the sweep does not reach 1 kHz or is not heard there.
     *
     * @param channelName name for the result
     * @param tapeSpeedMmPerS nominal tape speed, if known
     */
    public Response measure(String channelName, OptionalDouble tapeSpeedMmPerS) {
        LocalFit zero = LocalFit.at(octaves, levelDb, 0, REACH_OCTAVES);
        return zero == null
                ? null
                : withPhase(
                        response(channelName, sweep.cue().levelDb(), curve(zero), tapeSpeedMmPerS));
    }

    private Response withPhase(Response response) {
        double[] degrees =
                Arrays.stream(response.frequencyHz())
                        .map(f -> Math.toDegrees(sweep.phase(channel, sweep.index(f))))
                        .toArray();
        boolean told = Arrays.stream(degrees).allMatch(Double::isFinite);
        return told ? response.withPhase(degrees) : response;
    }

    private ResponseCurve curve(LocalFit zero) {
        int low = (int) Math.ceil(GRID * octaves[0]);
        int high = (int) Math.floor(GRID * octaves[octaves.length - 1]);
        double[] hz = new double[high - low + 1];
        double[] db = new double[hz.length];
        double[] uncertaintyDb = new double[hz.length];
        int count = 0;
        for (int n = low; n <= high; n++) {
            LocalFit fit = LocalFit.at(octaves, levelDb, (double) n / GRID, REACH_OCTAVES);
            if (fit != null) {
                double error = n == 0 ? 0 : Math.hypot(error(fit, n), error(zero, 0));
                hz[count] = 1000 * Math.pow(2, (double) n / GRID);
                double own = OWN_UNCERTAINTY_DB + lagDb(hz[count], fit.slope());
                double unsteady = 2 * unsteadiness * Math.abs(fit.slope()) / Math.log(2);
                db[count] = fit.value() - zero.value();
                uncertaintyDb[count] = Math.hypot(2 * error, Math.hypot(own, unsteady));
                count++;
            }
        }
        return steady(
                Arrays.copyOf(hz, count),
                Arrays.copyOf(db, count),
                Arrays.copyOf(uncertaintyDb, count));
    }

    /**
     * Standard uncertainty of a fit: the scatter of its points, or what the silence's noise gives
     * if that is more. Where a band passes faster than the noise changes, as in the bass, its
     * neighbours err with it and do not scatter; hum beats slowly with the sweep that passes it.
     */
    private double error(LocalFit fit, int n) {
        double variance = 0;
        double values = 0;
        int bands = 0;
        for (int i = 0; i < octaves.length; i++) {
            if (Math.abs(octaves[i] - (double) n / GRID) <= 1.0001 * REACH_OCTAVES) {
                variance += noiseDb2[i];
                values += sweep.values(i);
                bands++;
            }
        }
        double each = variance / bands;
        double noise = Math.sqrt(each * Math.min(1, LocalFit.WIDENING / values));
        return Math.max(fit.standardError(), noise);
    }

    private double lagDb(double hz, double slope) {
        double start = sweep.cue().startHz();
        double share = hz < START_SHARE * start ? LAG_AT_START_DB : LAG_DB;
        return share * Math.abs(slope) / sweep.growthCycles(hz) + RINGING_DB * start / hz;
    }

    private ResponseCurve steady(double[] hz, double[] db, double[] uncertaintyDb) {
        SweepLag lag = new SweepLag(hz, db, sweep.growthCycles(1));
        double[] least = lag.leastPhase();
        double[] excess = lag.excessDb(least);
        double[] measured =
                Arrays.stream(hz).map(f -> sweep.phase(channel, sweep.index(f))).toArray();
        double from = START_SHARE * sweep.cue().startHz();
        double share = PhaseShare.of(from, hz, measured, least);
        for (int i = 0; i < db.length; i++) {
            db[i] -= share * excess[i];
        }
        return new ResponseCurve(hz, db, uncertaintyDb);
    }

    /**
     * What a curve tells.
     *
     * @param levelDb level of the sweep it is from, dB re reference
     */
    static Response response(
            String channelName,
            double levelDb,
            ResponseCurve curve,
            OptionalDouble tapeSpeedMmPerS) {
        double rippleFrom = Math.max(RIPPLE_FROM_HZ, curve.endHz(-1));
        double rippleTo = Math.min(RIPPLE_TO_HZ, curve.endHz(1));
        return new Response(
                channelName,
                levelDb,
                curve.hz(),
                curve.db(),
                curve.uncertaintyDb(),
                BandMeasure.edge(curve, -1),
                BandMeasure.edge(curve, 1),
                ripple(curve, rippleFrom, rippleTo),
                rippleFrom,
                rippleTo,
                BandMeasure.bands(curve),
                new ContourSearch(curve, tapeSpeedMmPerS).find(),
                null,
                List.of());
    }

    private static Quantity ripple(ResponseCurve curve, double from, double to) {
        int low = -1;
        int high = -1;
        double[] db = curve.db();
        for (int i = 0; i < curve.hz().length; i++) {
            if (curve.hz()[i] >= from * 0.999 && curve.hz()[i] <= to * 1.001) {
                low = low < 0 || db[i] < db[low] ? i : low;
                high = high < 0 || db[i] > db[high] ? i : high;
            }
        }
        return low >= 0
                ? Quantity.known(
                        (db[high] - db[low]) / 2,
                        "dB",
                        Math.hypot(curve.uncertaintyDb()[high], curve.uncertaintyDb()[low]) / 2)
                : Quantity.unknown(SAID.say("no-ripple"));
    }
}
