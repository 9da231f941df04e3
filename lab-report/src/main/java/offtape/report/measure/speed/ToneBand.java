package offtape.report.measure.speed;

/**
 * The band around a tone that is demodulated. It holds changes of speed of 200 Hz and what the tone
 * wanders; a low tone has less, for its harmonics must stay out. A tone of frequency f is heard on
 * both sides of 0 Hz, which leaves a demodulator less than f whatever it does.
 *
 * @param passHz everything up to here from the tone passes whole
 * @param stopHz nothing passes from here on
 */
record ToneBand(double passHz, double stopHz) {

    private static final double FLUTTER_HZ = 220;
    private static final double WANDER = 0.012;
    private static final double WIDEST_SHARE = 0.55;
    private static final double HARMONICS_STAY_OUT = 0.92;

    /** The band of a tone. */
    static ToneBand of(double toneHz) {
        double pass = Math.min(FLUTTER_HZ + WANDER * toneHz, WIDEST_SHARE * toneHz);
        return new ToneBand(pass, Math.min(1.7 * pass, HARMONICS_STAY_OUT * toneHz));
    }
}
