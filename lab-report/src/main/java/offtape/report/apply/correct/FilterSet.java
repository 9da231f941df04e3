package offtape.report.apply.correct;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import offtape.core.filter.FirDesign;
import offtape.core.filter.FirFilter;

/** Makes the filters of all channels for a sample rate, of one length. */
final class FilterSet {

    private static final double MILLI = 1000;

    private FilterSet() {}

    /**
     * The file of a rate.
     *
     * @param gains wanted gain of each channel, in the order of the file
     */
    static FilterFile of(Map<String, Curve> gains, int sampleRateHz) {
        List<FirFilter> made =
                gains.values().stream()
                        .map(g -> FirDesign.minimumPhase(g::at, sampleRateHz))
                        .toList();
        int taps = made.stream().mapToInt(f -> f.taps().length).max().orElseThrow();
        List<FirFilter> filters =
                made.stream()
                        .map(f -> new FirFilter(sampleRateHz, Arrays.copyOf(f.taps(), taps)))
                        .toList();
        List<FilterFile.Channel> channels = new ArrayList<>();
        for (Map.Entry<String, Curve> g : gains.entrySet()) {
            FirFilter filter = filters.get(channels.size());
            channels.add(
                    new FilterFile.Channel(
                            g.getKey(),
                            filter.errorFrom(
                                    g.getValue()::at,
                                    FirDesign.FROM_HZ,
                                    FirDesign.highestHz(sampleRateHz)),
                            filter.peakGainDb(),
                            filter.boundDb()));
        }
        return new FilterFile(
                "pre-emphasis-" + sampleRateHz + ".wav",
                "after-tape-" + sampleRateHz + ".wav",
                sampleRateHz,
                taps,
                MILLI * taps / sampleRateHz,
                channels,
                filters);
    }
}
