package offtape.report.measure.speed;

import offtape.core.dsp.Downconverter;

/**
 * The rates of change that count as scrape flutter, as far as a tone shows them: half its frequency
 * at the most, so that the filter around it can fall off before its harmonics.
 *
 * @param lowHz slowest
 * @param highHz fastest
 * @param stopHz nothing passes the filter from here on, counted from the tone
 */
record ScrapeBand(double lowHz, double highHz, double stopHz) {

    /** Where flutter as meters read it ends. */
    static final double LOW_HZ = 200;

    private static final double HIGH_HZ = 1500;
    private static final double NARROWEST_HZ = 200;
    private static final double TONE_SHARE = 0.5;

    /** How far a tone may wander, a share of its frequency, and a little more. */
    private static final double WANDER = 0.012;

    private static final double MORE_HZ = 20;
    private static final double STOP_OVER_PASS = 1.7;
    private static final double HARMONICS_STAY_OUT = 0.92;

    /** The band that a tone shows in a recording. */
    static ScrapeBand of(double toneHz, int sampleRateHz) {
        double margin = WANDER * toneHz + MORE_HZ;
        double room = HARMONICS_STAY_OUT * Math.min(toneHz, sampleRateHz / 2.0 - toneHz);
        double high = Math.min(HIGH_HZ, TONE_SHARE * toneHz);
        high = Math.min(high, room / STOP_OVER_PASS - margin);
        double stop = Math.min(STOP_OVER_PASS * (high + margin), room);
        return new ScrapeBand(LOW_HZ, high, stop);
    }

    /** Whether there is enough of it to be told. */
    boolean isWide() {
        return highHz >= lowHz + NARROWEST_HZ;
    }

    /**
     * The filter that keeps the band on both sides of the tone. Its rate, a quarter more than what
     * passes and stops together, is more than three times the band, up to where the differentiator
     * is true.
     */
    Downconverter converter(double toneHz, int sampleRateHz) {
        double pass = highHz + WANDER * toneHz + MORE_HZ;
        return Downconverter.of(pass, stopHz, sampleRateHz);
    }
}
