package offtape.reference;

import java.util.List;

/**
 * Recorded motion of a real three-head transport at 19.05 cm/s: how late the off-tape return came
 * back, about its mean. Five seconds, 100 values a second. Because record and replay head heard the
 * one transport, the off-tape comb is in the motion. Source and licence: {@code motion/README.md}.
 *
 * @param seconds times in the programme, evenly spaced, rising
 * @param lateMicroseconds lateness at those times, positive is late
 */
public record TransportMotion(double[] seconds, double[] lateMicroseconds) {

    /** Names of the motions that can be loaded. */
    public static final List<String> NAMES = List.of("transport-a", "transport-b", "transport-c");

    /**
     * The motion of that name.
     *
     * @param name one of {@link #NAMES}
     * @throws IllegalArgumentException if there is none
     */
    public static TransportMotion load(String name) {
        List<String> lines = Resources.text("motion/" + name + ".csv").lines().skip(1).toList();
        return new TransportMotion(column(lines, 0), column(lines, 1));
    }

    private static double[] column(List<String> lines, int index) {
        return lines.stream().mapToDouble(s -> Double.parseDouble(s.split(",")[index])).toArray();
    }
}
