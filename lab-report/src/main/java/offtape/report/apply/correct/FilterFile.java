package offtape.report.apply.correct;

import com.fasterxml.jackson.annotation.JsonIgnore;
import java.util.List;
import offtape.core.filter.FirFilter;
import offtape.core.filter.GainError;

/**
 * The correction as a filter for one sample rate.
 *
 * @param beforeTape name of the file for the way before the tape
 * @param afterTape name of the file for the way after it, the same filter
 * @param sampleRateHz frames a second
 * @param taps its length in samples
 * @param milliseconds the same in time; as a filter of minimum phase it delays by nothing of that
 * @param channels one entry a channel of the file, in its order
 * @param filters the filters, in the same order
 */
public record FilterFile(
        String beforeTape,
        String afterTape,
        int sampleRateHz,
        int taps,
        double milliseconds,
        List<Channel> channels,
        @JsonIgnore List<FirFilter> filters) {

    /** Copies the lists. */
    public FilterFile {
        channels = List.copyOf(channels);
        filters = List.copyOf(filters);
    }

    /**
     * One channel of it.
     *
     * @param channel {@code left} or {@code right}
     * @param error of the gain of what is written against the wanted one
     * @param peakGainDb largest gain: so much lower a programme of steady tones has to be
     * @param boundDb no sound at all comes out with a peak higher by more than this, dB
     */
    public record Channel(String channel, GainError error, double peakGainDb, double boundDb) {}

    /** Largest gain of all channels, dB, 0 at least. */
    public double peakGainDb() {
        return channels.stream().mapToDouble(Channel::peakGainDb).reduce(0, Math::max);
    }

    /** Largest bound of all channels, dB. */
    public double boundDb() {
        return channels.stream().mapToDouble(Channel::boundDb).reduce(0, Math::max);
    }

    /** The impulse responses, one array a channel, all of one length. */
    public double[][] response() {
        return filters.stream().map(FirFilter::taps).toArray(double[][]::new);
    }
}
