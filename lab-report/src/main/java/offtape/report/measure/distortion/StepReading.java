package offtape.report.measure.distortion;

import offtape.core.unit.Decibels;
import offtape.report.measure.tone.OrderSpectrum;
import offtape.report.result.LadderStep;
import offtape.report.result.StepNoise;

/** One tone of a ladder on one channel, read from its orders, before compression is known. */
final class StepReading {

    private static final double HIGHEST_HARMONIC_HZ = 20_000;
    private static final int HIGHEST_ORDER = 10;
    private static final double OF_RATE = 0.45;

    /**
     * K3 over its floor from which noise moves it by less than 1 % (k = 2): noise of mean power N
     * beside a line of amplitude A moves the amplitude by √(N/2)/A, one standard deviation.
     */
    private static final double CLEAR = 141;

    /** A tone less than this over the noise beside it is not heard, as a power ratio. */
    private static final double HEARD = 10;

    /** What order tracking may leave of a harmonic, a share of it, k = 2. */
    private static final double OWN_SHARE = 0.001;

    private final OrderSpectrum orders;
    private final double fundamental;
    private final int highest;

    private StepReading(OrderSpectrum orders, double fundamental, int highest) {
        this.orders = orders;
        this.fundamental = fundamental;
        this.highest = highest;
    }

    /**
     * Reads a tone.
     *
     * @param heard its orders on the channel, or null if there are none
     * @param own the same without what leaked in of the other channel
     * @param hz frequency of the tone as it returns
     * @param referencePeak peak of the returned reference tone
     * @param levelDb level in the programme
     */
    static LadderStep of(
            OrderSpectrum heard,
            OrderSpectrum own,
            double hz,
            int rateHz,
            double referencePeak,
            double levelDb) {
        if (heard == null || !isHeard(heard) || !isHeard(own)) {
            return new LadderStep(
                    levelDb, null, null, null, null, null, null, true, StepNoise.NOT_HEARD);
        }
        double limit = Math.min(HIGHEST_HARMONIC_HZ, OF_RATE * rateHz);
        int highest = Math.min(HIGHEST_ORDER, OrderSpectrum.highestOrder(hz, limit));
        return new StepReading(own, tone(own), highest)
                .step(levelDb, Decibels.ofPower(tone(heard)) - Decibels.ofAmplitude(referencePeak));
    }

    private static boolean isHeard(OrderSpectrum orders) {
        return tone(orders) > HEARD * orders.noise(1);
    }

    /** Squared peak of the fundamental, noise taken out. */
    private static double tone(OrderSpectrum orders) {
        return orders.power(1) - orders.noise(1);
    }

    private LadderStep step(double levelDb, double replayDb) {
        HarmonicReading none = new HarmonicReading(null, null);
        HarmonicReading k2 = highest >= 2 ? line(2) : none;
        HarmonicReading k3 = highest >= 3 ? line(3) : none;
        HarmonicReading thd = highest >= 3 ? all() : none;
        Double floor = highest >= 3 ? Math.sqrt(orders.noise(3) / fundamental) : null;
        boolean limited = k3.ratio() == null || k3.ratio() < CLEAR * floor;
        double replayUncertaintyDb =
                2 * Decibels.ofAmplitude(1 + Math.sqrt(orders.unrest(1) / 2 / fundamental));
        return new LadderStep(
                levelDb,
                replayDb,
                percent(k2.ratio()),
                percent(k3.ratio()),
                percent(thd.ratio()),
                null,
                percent(floor),
                limited,
                new StepNoise(
                        percent(k2.below()),
                        percent(k3.below()),
                        percent(thd.below()),
                        k3.ratio() == null ? null : percent(uncertainty(k3.ratio(), floor)),
                        replayUncertaintyDb,
                        false));
    }

    private static double uncertainty(double ratio, double floor) {
        return Math.hypot(Math.sqrt(2) * floor, OWN_SHARE * ratio);
    }

    private HarmonicReading line(int order) {
        return HarmonicReading.of(orders.power(order), orders.noise(order), 1, fundamental);
    }

    /** All harmonics: never less than those that stand out each by itself. */
    private HarmonicReading all() {
        double power = 0;
        double noise = 0;
        double clear = 0;
        for (int order = 2; order <= highest; order++) {
            power += orders.power(order);
            noise += orders.noise(order);
            Double ratio = line(order).ratio();
            clear += ratio == null ? 0 : ratio * ratio * fundamental;
        }
        int lines = highest - 1;
        HarmonicReading together = HarmonicReading.of(power, noise / lines, lines, fundamental);
        double least = Math.max(clear, power - noise);
        return clear > 0 || together.ratio() != null
                ? HarmonicReading.told(least, fundamental)
                : together;
    }

    private static Double percent(Double ratio) {
        return ratio == null ? null : 100 * ratio;
    }
}
