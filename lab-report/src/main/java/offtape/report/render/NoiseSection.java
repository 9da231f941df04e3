package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import offtape.report.headline.Find;
import offtape.report.headline.Subject;
import offtape.report.result.HumLine;
import offtape.report.result.Noise;
import offtape.report.result.Results;

/** What is heard when nothing was recorded. */
final class NoiseSection {

    private static final int LABELLED = 4;

    /**
     * Of the level in a third-octave band: hiss of some seconds scatters by 8.7 dB/√(band · time),
     * k = 2, which is 1.3 dB at 25 Hz and 0.1 dB at 5 kHz in eight seconds.
     */
    private static final int BAND_DECIMALS = 1;

    /** Lines of both channels closer than this are one. */
    private static final double SAME_LINE_HZ = 1;

    private NoiseSection() {}

    /** The section. */
    static Section of(Results results) {
        Markup body =
                Section.paragraph(
                        Subject.of(results)
                                .words(
                                        "What is heard when nothing plays? Hiss belongs to tape; single"
                                                + " lines at multiples of the mains frequency are hum from"
                                                + " the machine or its wiring.",
                                        "What is heard when nothing plays? Single lines at multiples of"
                                                + " the mains frequency are hum from the wiring or the"
                                                + " supply."));
        List<Noise> drawn = results.noise().stream().filter(NoiseSection::hasSpectrum).toList();
        if (drawn.isEmpty()) {
            body.add(Section.paragraph("No spectrum of silence was found in this recording."));
        } else {
            String caption = caption(drawn);
            body.add(Section.figure(caption, List.of(chart(drawn, caption))));
        }
        if (!results.noise().isEmpty()) {
            body.add(levels(results).open());
            body.add(beside(results).open());
        }
        body.add(hum(results).folded());
        body.add(NoiseTable.of(drawn).folded());
        return new Section("noise", "Noise and hum", body);
    }

    private static boolean hasSpectrum(Noise noise) {
        return noise.spectrum() != null
                && Arrays.stream(noise.spectrum().frequencyHz()).anyMatch(f -> f > 0);
    }

    private static Chart chart(List<Noise> drawn, String caption) {
        double[] levels =
                drawn.stream()
                        .flatMapToDouble(
                                n ->
                                        DoubleStream.concat(
                                                Arrays.stream(n.spectrum().levelDb()),
                                                n.hum().stream().mapToDouble(HumLine::levelDb)))
                        .filter(Double::isFinite)
                        .toArray();
        double low = DoubleStream.of(levels).min().orElse(-100);
        double high = DoubleStream.of(levels).max().orElse(-40);
        return Chart.of(
                        "noise-chart",
                        "Noise of recorded silence in third-octave bands",
                        caption,
                        Axis.audioFrequency(lowest(drawn), 20_000),
                        Axis.linear(
                                "Level in the band, dB re reference",
                                10 * Math.floor((low - 3) / 10),
                                10 * Math.ceil((high + 6) / 10)),
                        drawn.stream()
                                .map(
                                        n ->
                                                Series.of(
                                                        Words.sentence(n.channel()),
                                                        Look.of(n.channel(), false),
                                                        n.spectrum().frequencyHz(),
                                                        n.spectrum().levelDb(),
                                                        BAND_DECIMALS))
                                .toList())
                .withMarks(
                        drawn.stream()
                                .flatMap(
                                        n ->
                                                strongest(n).stream()
                                                        .filter(h -> isLoudest(drawn, n, h))
                                                        .map(h -> mark(n, h)))
                                .toList());
    }

    /** One mark a frequency: those of both channels would lie on each other. */
    private static boolean isLoudest(List<Noise> drawn, Noise noise, HumLine hum) {
        return drawn.stream()
                .filter(other -> other != noise)
                .flatMap(other -> strongest(other).stream())
                .filter(other -> Math.abs(other.frequencyHz() - hum.frequencyHz()) < SAME_LINE_HZ)
                .noneMatch(
                        other ->
                                other.levelDb() > hum.levelDb()
                                        || other.levelDb() == hum.levelDb()
                                                && noise != drawn.get(0));
    }

    private static double lowest(List<Noise> drawn) {
        double low =
                drawn.stream()
                        .flatMapToDouble(n -> Arrays.stream(n.spectrum().frequencyHz()))
                        .filter(f -> f > 0)
                        .min()
                        .orElseThrow();
        return Math.max(10, Math.min(20, low));
    }

    private static Chart.Mark mark(Noise noise, HumLine hum) {
        return new Chart.Mark(
                hum.frequencyHz(),
                hum.levelDb(),
                Math.min(ResponseSection.MOST_DECIMALS, Numbers.decimals(hum.uncertaintyDb())),
                Words.sentence(noise.channel()).charAt(0)
                        + " "
                        + Numbers.frequency(hum.frequencyHz()),
                Look.of(noise.channel(), false),
                true);
    }

    private static List<HumLine> strongest(Noise noise) {
        return noise.hum().stream()
                .sorted(Comparator.comparingDouble(HumLine::levelDb).reversed())
                .limit(LABELLED)
                .toList();
    }

    private static String caption(List<Noise> drawn) {
        List<String> sentences = new ArrayList<>();
        for (Noise noise : drawn) {
            List<HumLine> lines = strongest(noise);
            sentences.add(
                    lines.isEmpty()
                            ? "No hum stands out of the hiss on the "
                                    + noise.channel()
                                    + " channel"
                                    + from(noise)
                                    + "."
                            : "On the "
                                    + noise.channel()
                                    + " channel the strongest hum is "
                                    + Numbers.level(lines.get(0).levelDb())
                                    + " at "
                                    + Numbers.frequency(lines.get(0).frequencyHz())
                                    + ".");
        }
        return String.join(" ", sentences);
    }

    private static String from(Noise noise) {
        return Find.value(noise.humThreshold()).isPresent()
                ? "; a line from " + Numbers.level(noise.humThreshold().value()) + " up would"
                : "";
    }

    private static DataTable levels(Results results) {
        List<List<String>> rows =
                results.noise().stream()
                        .map(
                                n ->
                                        List.of(
                                                Words.sentence(n.channel()),
                                                Numbers.full(Find.figure(n.unweighted()), true),
                                                Numbers.full(Find.figure(n.aWeighted()), true),
                                                Numbers.full(Find.figure(n.itu468()), true),
                                                Numbers.full(Find.figure(n.dynamicRange()), false)))
                        .toList();
        return new DataTable(
                "Noise of recorded silence, re reference",
                List.of(
                        "Channel",
                        band(results),
                        "A-weighted, rms",
                        "ITU-R BS.468, quasi-peak",
                        "Dynamic range"),
                rows);
    }

    /** The band that was measured, which the sample rate may cut short. */
    private static String band(Results results) {
        return results.noise().stream()
                .map(Noise::unweightedBandHz)
                .filter(b -> b != null && b.length == 2)
                .findFirst()
                .map(b -> ends(b) + ", rms")
                .orElse("Unweighted, rms");
    }

    private static String ends(double[] band) {
        return Numbers.frequency(band[0])
                + " to "
                + Numbers.withUnit(Numbers.significant(band[1] / 1000, 4), "kHz");
    }

    private static DataTable beside(Results results) {
        return new DataTable(
                "Noise beside a tone, mains, and an earlier recording",
                List.of(
                        "Channel",
                        "Modulation noise, 10 Hz to 1 kHz, re the tone",
                        "Mains frequency",
                        "Hum would have been found from",
                        "An earlier recording in the silence, re reference"),
                results.noise().stream()
                        .map(
                                n ->
                                        List.of(
                                                Words.sentence(n.channel()),
                                                Numbers.full(
                                                        Find.figure(n.modulationNoise()), true),
                                                Numbers.full(
                                                        Find.figure(n.mainsFrequency()), false),
                                                Numbers.full(Find.figure(n.humThreshold()), true),
                                                Numbers.full(Find.figure(n.residue()), true)))
                        .toList());
    }

    private static DataTable hum(Results results) {
        return new DataTable(
                "mains lines",
                List.of("Channel", "Frequency, Hz", "Level, dB re reference", "Uncertainty, dB"),
                results.noise().stream()
                        .flatMap(
                                n ->
                                        n.hum().stream()
                                                .map(
                                                        h ->
                                                                List.of(
                                                                        Words.sentence(n.channel()),
                                                                        Numbers.decimal(
                                                                                h.frequencyHz(), 2),
                                                                        Numbers.signed(
                                                                                h.levelDb(), 1),
                                                                        Numbers.decimal(
                                                                                h.uncertaintyDb(),
                                                                                1))))
                        .toList());
    }
}
