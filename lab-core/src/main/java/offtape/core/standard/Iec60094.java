package offtape.core.standard;

import java.util.List;
import java.util.stream.IntStream;
import offtape.core.unit.Decibels;
import offtape.reference.ReferenceTable;

/**
 * Recorded flux and replay equalisation after IEC 60094-1 clause 15: flux over frequency follows
 * √(1 + 1/(ω t_low)²) / √(1 + (ω t_high)²), with the time constants of tape speed and standard.
 */
public final class Iec60094 {

    private static final double REFERENCE_HZ = 1000;

    /** Nominal speeds are rounded: 4.76 cm/s is 4.7625 cm/s. */
    private static final double SAME_SPEED = 0.005;

    private static final double MM_PER_S_PER_CM_PER_S = 10;

    private Iec60094() {}

    /**
     * The equalisation of a medium, speed and standard.
     *
     * @param medium {@code reel}, or {@code cassette} with its tape types
     * @param speedMmPerS nominal tape speed as listed, mm/s
     * @param standard names of the standards that set it
     * @param lowMicroseconds low-frequency time constant, positive infinity if there is none
     * @param highMicroseconds high-frequency time constant
     * @param status whether it is current, or the years it held
     */
    public record Equalisation(
            String medium,
            double speedMmPerS,
            String standard,
            double lowMicroseconds,
            double highMicroseconds,
            String status) {

        /** Recorded flux in dB re 1 kHz at a frequency in hertz above 0. */
        public double fluxDb(double frequencyHz) {
            return Iec60094.fluxDb(frequencyHz, lowMicroseconds, highMicroseconds);
        }
    }

    /**
     * Recorded flux of a flat programme, dB re 1 kHz. The gain of the replay amplifier behind an
     * ideal head, whose voltage is the rate of change of flux, is the inverse of flux times
     * frequency.
     *
     * @param frequencyHz frequency, above 0
     * @param lowMicroseconds low-frequency time constant, positive infinity if there is none
     * @param highMicroseconds high-frequency time constant, 0 or more
     */
    public static double fluxDb(
            double frequencyHz, double lowMicroseconds, double highMicroseconds) {
        return Decibels.ofPower(
                fluxPower(frequencyHz, lowMicroseconds, highMicroseconds)
                        / fluxPower(REFERENCE_HZ, lowMicroseconds, highMicroseconds));
    }

    /**
     * Every published equalisation of a tape speed, in the order of the table; empty if none.
     *
     * @param speedMmPerS tape speed within 0.5 % of a nominal one, mm/s
     */
    public static List<Equalisation> equalisations(double speedMmPerS) {
        ReferenceTable table = ReferenceTable.load("replay-eq");
        return IntStream.range(0, table.size())
                .mapToObj(row -> equalisation(table, row))
                .filter(e -> Math.abs(speedMmPerS / e.speedMmPerS() - 1) < SAME_SPEED)
                .toList();
    }

    private static Equalisation equalisation(ReferenceTable table, int row) {
        boolean hasLow = table.hasNumber(row, "lowTimeConstant");
        return new Equalisation(
                table.text(row, "medium"),
                MM_PER_S_PER_CM_PER_S * table.number(row, "speed"),
                table.text(row, "standard"),
                hasLow ? table.number(row, "lowTimeConstant") : Double.POSITIVE_INFINITY,
                table.number(row, "highTimeConstant"),
                table.text(row, "status"));
    }

    private static double fluxPower(double frequencyHz, double lowUs, double highUs) {
        double radiansPerMicrosecond = 2e-6 * Math.PI * frequencyHz;
        double low = 1 / (radiansPerMicrosecond * lowUs);
        double high = radiansPerMicrosecond * highUs;
        return (1 + low * low) / (1 + high * high);
    }
}
