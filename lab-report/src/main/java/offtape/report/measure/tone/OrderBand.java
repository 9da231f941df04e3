package offtape.report.measure.tone;

/**
 * The band about a steady tone that holds its flutter and leaves its harmonics out.
 *
 * @param passHz everything up to here from the tone passes whole
 * @param stopHz nothing passes from here on
 */
public record OrderBand(double passHz, double stopHz) {

    /** Wow of 4 Hz passes with every tone. */
    private static final double LEAST_HZ = 4;

    /** The band of a tone. */
    public static OrderBand of(double toneHz) {
        double pass = Math.min(0.04 * toneHz + 20, 0.3 * toneHz);
        return new OrderBand(pass, Math.min(2 * pass, 0.6 * toneHz));
    }

    /**
     * The band in which the level of a tone is read. For low tones it is narrower, so that hum
     * stays out. What it costs: flutter of 0.3 % peak just outside swings the phase by 0.003 / 0.06
     * = 0.05 rad at most, which takes half its square, 0.005 dB, out of the band; 0.1 % takes
     * 0.0006 dB.
     */
    public static OrderBand forLevel(double toneHz) {
        OrderBand band = of(toneHz);
        double pass = Math.min(band.passHz, Math.max(LEAST_HZ, 0.06 * toneHz));
        return new OrderBand(pass, Math.min(2 * pass, band.stopHz));
    }

    /** The same, narrowed where it would reach over half the sample rate. */
    public OrderBand below(double toneHz, int sampleRateHz) {
        double room = sampleRateHz / 2.0 - toneHz;
        return stopHz <= room ? this : new OrderBand(Math.min(passHz, 0.5 * room), room);
    }
}
