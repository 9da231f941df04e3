package offtape.cli.lineup;

import java.util.ArrayList;
import java.util.List;

/**
 * The delay between the channels as it moves.
 *
 * @param recent sizes of the last readings in microseconds, oldest first
 * @param bestMonoDb least loss of a mono sum at 10 kHz that was seen, 0 or less
 */
public record AzimuthTrack(List<Double> recent, double bestMonoDb) {

    /** Which way the delay goes. */
    public enum Course {
        /** Towards nothing. */
        BETTER,
        /** Away from nothing. */
        WORSE,
        /** Neither. */
        STEADY
    }

    private static final int KEPT = 6;
    private static final double CLEAR_MICROSECONDS = 0.6;
    private static final double WORST_DB = -60;

    /** Copies the list. */
    public AzimuthTrack {
        recent = List.copyOf(recent);
    }

    static AzimuthTrack begin() {
        return new AzimuthTrack(List.of(), WORST_DB);
    }

    /** Whether a mono sum has been seen. */
    public boolean hasBest() {
        return bestMonoDb > WORST_DB;
    }

    AzimuthTrack with(PairReading reading) {
        if (reading.kind() == PairReading.Kind.UNRELATED) {
            return new AzimuthTrack(List.of(), bestMonoDb);
        }
        List<Double> next = new ArrayList<>(recent);
        next.add(Math.abs(reading.delayMicroseconds()));
        return new AzimuthTrack(
                next.subList(Math.max(0, next.size() - KEPT), next.size()),
                reading.monoLossDb() == null
                        ? bestMonoDb
                        : Math.max(bestMonoDb, reading.monoLossDb()));
    }

    /** Which way it goes over the last readings. */
    public Course course() {
        if (recent.size() < 2) {
            return Course.STEADY;
        }
        double change = recent.get(recent.size() - 1) - recent.get(0);
        double clear = Math.max(CLEAR_MICROSECONDS, 0.03 * recent.get(0));
        return change < -clear ? Course.BETTER : change > clear ? Course.WORSE : Course.STEADY;
    }
}
