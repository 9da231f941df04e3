package offtape.core.machine;

import java.util.stream.IntStream;

/**
 * The small-signal response of one channel: the exact response of the filters that run, at
 * frequencies of the programme, for the mean pitch of the return.
 *
 * @param channel {@code left} or {@code right}
 * @param gainAt1kHzDb gain from programme to return at 1 kHz
 * @param frequencyHz frequencies, 24 an octave from 10 Hz to 92 % of half the sample rate
 * @param magnitudeDb magnitude, 0 dB at 1 kHz, same length
 * @param lowerEdgeHz −3 dB re 1 kHz, or null if there is none above 1 Hz
 * @param upperEdgeHz −3 dB re 1 kHz; where nothing else limits it, that of the band limit
 */
public record ResponseTruth(
        String channel,
        double gainAt1kHzDb,
        double[] frequencyHz,
        double[] magnitudeDb,
        Double lowerEdgeHz,
        Double upperEdgeHz) {

    private static final double NORMAL_HZ = 1000;
    private static final double LOWEST_HZ = 10;
    private static final double LOWEST_EDGE_HZ = 1;
    private static final double BAND_SHARE = 0.92;
    private static final double EDGE_DB = -3;
    private static final int PER_OCTAVE = 24;

    static ResponseTruth of(String channel, SteadyTone tone) {
        double top = BAND_SHARE * tone.bandHz();
        int count = 1 + (int) (PER_OCTAVE * Math.log(top / LOWEST_HZ) / Math.log(2));
        double[] frequency =
                IntStream.range(0, count)
                        .mapToDouble(i -> LOWEST_HZ * Math.pow(2, (double) i / PER_OCTAVE))
                        .toArray();
        double[] magnitude = new double[count];
        for (int i = 0; i < count; i++) {
            magnitude[i] = relativeDb(tone, frequency[i]);
        }
        return new ResponseTruth(
                channel,
                20 * Math.log10(tone.gain(NORMAL_HZ)),
                frequency,
                magnitude,
                edge(tone, -1, LOWEST_EDGE_HZ),
                edge(tone, 1, tone.bandHz()));
    }

    private static double relativeDb(SteadyTone tone, double frequencyHz) {
        return 20 * Math.log10(Math.max(1e-12, tone.gain(frequencyHz) / tone.gain(NORMAL_HZ)));
    }

    // The first crossing on the way outward from 1 kHz.
    private static Double edge(SteadyTone tone, int direction, double end) {
        double inner = NORMAL_HZ;
        while (direction * inner < direction * end) {
            double outer = inner * Math.pow(2, (double) direction / PER_OCTAVE);
            outer = direction > 0 ? Math.min(outer, end) : Math.max(outer, end);
            Double edge = Crossing.between(f -> relativeDb(tone, f) - EDGE_DB, inner, outer);
            if (edge != null) {
                return edge;
            }
            inner = outer;
        }
        return null;
    }
}
