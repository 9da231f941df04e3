package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.report.result.RateBand;
import offtape.report.result.SpeedComponent;
import offtape.report.result.TransportSpectrum;
import offtape.report.result.TransportSpeed;

/** The transport's own deviation drawn over time and over rate. */
final class TransportCharts {

    private static final double LOWEST_HZ = 0.15;
    private static final double HIGHEST_HZ = 200;

    /** Decimals of a percentage that are of use. */
    private static final int MOST_DECIMALS = 4;

    private TransportCharts() {}

    /** Whether there is something to draw. */
    static boolean isThere(TransportSpeed own) {
        return own.trace() != null
                && own.trace().seconds().length > 0
                && own.spectrum() != null
                && Arrays.stream(own.spectrum().peakPercent()).anyMatch(p -> p > 0);
    }

    /** Deviation over time. */
    static Chart trace(Wording words, TransportSpeed own, String caption) {
        return SpeedCharts.trace(
                words,
                "transport-trace",
                words.say("speed.transport-trace-title"),
                own.trace(),
                SpeedCharts.decimals(own.unweightedPeak()),
                caption);
    }

    /** Peak deviation over rate, with what is uncertain of it and what is not recovered shaded. */
    static Chart spectrum(Wording words, TransportSpeed own, String caption) {
        TransportSpectrum s = own.spectrum();
        double high =
                Math.max(
                        Arrays.stream(s.peakPercent()).max().orElseThrow(),
                        own.components().stream()
                                .mapToDouble(SpeedComponent::peakPercent)
                                .max()
                                .orElse(0));
        double top = Axis.niceStep(high * 1.5);
        double bottom = top / 500;
        return Chart.of(
                        "transport-spectrum",
                        words.say("speed.transport-spectrum-title"),
                        caption,
                        Axis.oneTwoFive(words.say("page.axis-rate"), LOWEST_HZ, HIGHEST_HZ),
                        Axis.oneTwoFive(words.say("speed.axis-peak"), bottom, top),
                        List.of(
                                reach(s, bottom / 10),
                                Series.within(
                                        "",
                                        Look.WHOLE,
                                        s.frequencyHz(),
                                        s.peakPercent(),
                                        s.uncertaintyPercent(),
                                        MOST_DECIMALS)))
                .withMarks(SpeedCharts.marks(words, own.components()))
                .withBands(gaps(own.recoveredBands()));
    }

    /** From the least to the most that each rate may have. */
    private static Series reach(TransportSpectrum s, double bottom) {
        int n = s.frequencyHz().length;
        double[] x = new double[2 * n];
        double[] y = new double[2 * n];
        for (int i = 0; i < n; i++) {
            x[i] = s.frequencyHz()[i];
            y[i] = Math.max(bottom, s.peakPercent()[i] + s.uncertaintyPercent()[i]);
            x[2 * n - 1 - i] = x[i];
            y[2 * n - 1 - i] = Math.max(bottom, s.peakPercent()[i] - s.uncertaintyPercent()[i]);
        }
        return Series.of("", Look.EXTREMES, x, y, 0);
    }

    private static List<Chart.Band> gaps(List<RateBand> bands) {
        List<Chart.Band> gaps = new ArrayList<>();
        double from = 0;
        for (RateBand band : bands) {
            gap(gaps, from, band.fromHz());
            from = band.toHz();
        }
        gap(gaps, from, HIGHEST_HZ);
        return gaps;
    }

    private static void gap(List<Chart.Band> gaps, double from, double to) {
        if (to > LOWEST_HZ && to > from) {
            gaps.add(new Chart.Band(Math.max(from, LOWEST_HZ), to, ""));
        }
    }

    /** The spectrum as a file. */
    static CsvTable spectrumCsv(TransportSpeed own) {
        CsvTable table =
                new CsvTable("rate (Hz)", "peak deviation (%)", "uncertainty k=2 (%)", "recovered");
        if (own != null && own.spectrum() != null) {
            TransportSpectrum s = own.spectrum();
            IntStream.range(0, s.frequencyHz().length)
                    .forEach(
                            i ->
                                    table.number(s.frequencyHz()[i], 4)
                                            .number(s.peakPercent()[i], 6)
                                            .number(s.uncertaintyPercent()[i], 6)
                                            .text(isIn(own, s.frequencyHz()[i]) ? "yes" : "no")
                                            .end());
        }
        return table;
    }

    private static boolean isIn(TransportSpeed own, double hz) {
        return own.recoveredBands().stream().anyMatch(b -> hz >= b.fromHz() && hz <= b.toHz());
    }
}
