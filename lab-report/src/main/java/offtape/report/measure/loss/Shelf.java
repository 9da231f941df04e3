package offtape.report.measure.loss;

import java.util.ArrayList;
import java.util.List;
import offtape.core.standard.Iec60094;

/**
 * What a tape of one high-frequency time constant sounds like when it is replayed with another:
 * √((1 + (ωτr)²) / (1 + (ωτt)²)). Constants are those that IEC 60094-1 and the older standards have
 * for the tape speed.
 *
 * @param tapeUs time constant of the tape, µs
 * @param replayUs time constant of the replay amplifier, µs
 */
record Shelf(double tapeUs, double replayUs) {

    private static final double HIGH_HZ = 10_000;

    /** Every pair of different constants that are published for a tape speed. */
    static List<Shelf> of(double speedMmPerS) {
        double[] constants =
                Iec60094.equalisations(speedMmPerS).stream()
                        .mapToDouble(Iec60094.Equalisation::highMicroseconds)
                        .distinct()
                        .sorted()
                        .toArray();
        List<Shelf> shelves = new ArrayList<>();
        for (double tape : constants) {
            for (double replay : constants) {
                if (tape != replay) {
                    shelves.add(new Shelf(tape, replay));
                }
            }
        }
        return shelves;
    }

    /** The shelf in dB re 1 kHz. */
    double db(double hz) {
        double none = Double.POSITIVE_INFINITY;
        return Iec60094.fluxDb(hz, none, tapeUs) - Iec60094.fluxDb(hz, none, replayUs);
    }

    /** The shelf at 10 kHz, dB re 1 kHz. */
    double highDb() {
        return db(HIGH_HZ);
    }
}
