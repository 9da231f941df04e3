package offtape.report.measure.erasure;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import offtape.core.dsp.Baseband;

/**
 * The longest time in which a tone is about as loud as it gets.
 *
 * @param fromSeconds its start
 * @param toSeconds its end
 */
record LoudStretch(double fromSeconds, double toSeconds) {

    private static final double BLOCK_S = 0.1;

    /** Of the power of the loudest block. */
    private static final double LOUD = 0.25;

    /** Of all channels together. */
    static LoudStretch of(List<Baseband> channels) {
        Baseband first = channels.get(0);
        int length = Math.max(1, (int) Math.round(BLOCK_S * first.rateHz()));
        double[] power =
                IntStream.range(0, first.size() / length)
                        .mapToDouble(b -> power(channels, b * length, length))
                        .toArray();
        double least = LOUD * DoubleStream.of(power).max().orElse(0);
        int run = 0;
        int longest = 0;
        int end = 0;
        for (int b = 0; b < power.length; b++) {
            run = power[b] > least ? run + 1 : 0;
            if (run > longest) {
                longest = run;
                end = b + 1;
            }
        }
        return new LoudStretch(
                first.seconds((end - longest) * length), first.seconds(end * length));
    }

    private static double power(List<Baseband> channels, int from, int length) {
        double sum = 0;
        for (Baseband c : channels) {
            for (int k = from; k < from + length; k++) {
                sum += c.power(k);
            }
        }
        return sum;
    }
}
