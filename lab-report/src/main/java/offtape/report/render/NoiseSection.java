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

/**
 * What is heard when nothing was recorded.
 *
 * @param words of the reader's language
 */
record NoiseSection(Wording words) {

    private static final int LABELLED = 4;

    /**
     * Of the level in a third-octave band: hiss of some seconds scatters by 8.7 dB/√(band · time),
     * k = 2, which is 1.3 dB at 25 Hz and 0.1 dB at 5 kHz in eight seconds.
     */
    private static final int BAND_DECIMALS = 1;

    /** Lines of both channels closer than this are one. */
    private static final double SAME_LINE_HZ = 1;

    /** The section. */
    Section of(Results results) {
        Markup body =
                Section.paragraph(
                        words,
                        words.say(
                                Subject.of(results).words("noise.intro", "noise.intro-interface")));
        List<Noise> drawn = results.noise().stream().filter(NoiseSection::hasSpectrum).toList();
        if (drawn.isEmpty()) {
            body.add(Section.paragraph(words, words.say("noise.no-spectrum")));
        } else {
            String caption = caption(drawn);
            body.add(Section.figure(words, caption, List.of(chart(drawn, caption))));
        }
        if (!results.noise().isEmpty()) {
            body.add(levels(results).open());
            body.add(beside(results).open());
        }
        body.add(hum(results).folded(words));
        body.add(NoiseTable.of(words, drawn).folded(words));
        return new Section("noise", words.say("noise.heading"), body);
    }

    private static boolean hasSpectrum(Noise noise) {
        return noise.spectrum() != null
                && Arrays.stream(noise.spectrum().frequencyHz()).anyMatch(f -> f > 0);
    }

    private Chart chart(List<Noise> drawn, String caption) {
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
                        words.say("noise.title"),
                        caption,
                        Axis.audioFrequency(words, lowest(drawn), 20_000),
                        Axis.linear(
                                words.say("noise.axis-level"),
                                10 * Math.floor((low - 3) / 10),
                                10 * Math.ceil((high + 6) / 10)),
                        drawn.stream()
                                .map(
                                        n ->
                                                Series.of(
                                                        channel(n),
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

    private Chart.Mark mark(Noise noise, HumLine hum) {
        return new Chart.Mark(
                hum.frequencyHz(),
                hum.levelDb(),
                Math.min(ResponseSection.MOST_DECIMALS, Numbers.decimals(hum.uncertaintyDb())),
                channel(noise).charAt(0) + " " + words.frequency(hum.frequencyHz()),
                Look.of(noise.channel(), false),
                true);
    }

    private static List<HumLine> strongest(Noise noise) {
        return noise.hum().stream()
                .sorted(Comparator.comparingDouble(HumLine::levelDb).reversed())
                .limit(LABELLED)
                .toList();
    }

    private String caption(List<Noise> drawn) {
        List<String> sentences = new ArrayList<>();
        for (Noise noise : drawn) {
            List<HumLine> lines = strongest(noise);
            sentences.add(lines.isEmpty() ? noHum(noise) : told(noise, lines.get(0)));
        }
        return String.join(" ", sentences);
    }

    private String told(Noise noise, HumLine hum) {
        return words.say(
                "noise.strongest-hum",
                words.channel(noise.channel()),
                words.level(hum.levelDb()),
                words.frequency(hum.frequencyHz()));
    }

    private String noHum(Noise noise) {
        String channel = words.channel(noise.channel());
        return Find.value(noise.humThreshold()).isPresent()
                ? words.say("noise.no-hum-from", channel, words.level(noise.humThreshold().value()))
                : words.say("noise.no-hum", channel);
    }

    /** A channel with a capital letter. */
    private String channel(Noise noise) {
        return words.sentence(words.channel(noise.channel()));
    }

    private DataTable levels(Results results) {
        List<List<String>> rows =
                results.noise().stream()
                        .map(
                                n ->
                                        List.of(
                                                channel(n),
                                                words.full(Find.figure(n.unweighted()), true),
                                                words.full(Find.figure(n.aWeighted()), true),
                                                words.full(Find.figure(n.itu468()), true),
                                                words.full(Find.figure(n.dynamicRange()), false)))
                        .toList();
        return new DataTable(
                words.say("noise.levels"),
                List.of(
                        words.say("noise.head-channel"),
                        band(results),
                        words.say("noise.head-a-weighted"),
                        words.say("noise.head-itu468"),
                        words.say("noise.head-dynamic-range")),
                rows);
    }

    /** The band that was measured, which the sample rate may cut short. */
    private String band(Results results) {
        return results.noise().stream()
                .map(Noise::unweightedBandHz)
                .filter(b -> b != null && b.length == 2)
                .findFirst()
                .map(this::ends)
                .orElseGet(() -> words.say("noise.head-unweighted"));
    }

    private String ends(double[] band) {
        return words.say(
                "noise.head-band",
                words.frequency(band[0]),
                Numbers.withUnit(words.significant(band[1] / 1000, 4), "kHz"));
    }

    private DataTable beside(Results results) {
        return new DataTable(
                words.say("noise.beside"),
                List.of(
                        words.say("noise.head-channel"),
                        words.say("noise.head-modulation"),
                        words.say("noise.head-mains"),
                        words.say("noise.head-threshold"),
                        words.say("noise.head-residue")),
                results.noise().stream()
                        .map(
                                n ->
                                        List.of(
                                                channel(n),
                                                words.full(Find.figure(n.modulationNoise()), true),
                                                words.full(Find.figure(n.mainsFrequency()), false),
                                                words.full(Find.figure(n.humThreshold()), true),
                                                words.full(Find.figure(n.residue()), true)))
                        .toList());
    }

    private DataTable hum(Results results) {
        return new DataTable(
                words.say("noise.hum"),
                List.of(
                        words.say("noise.head-channel"),
                        words.say("noise.head-frequency"),
                        words.say("noise.head-level"),
                        words.say("noise.head-uncertainty")),
                results.noise().stream()
                        .flatMap(
                                n ->
                                        n.hum().stream()
                                                .map(
                                                        h ->
                                                                List.of(
                                                                        channel(n),
                                                                        words.decimal(
                                                                                h.frequencyHz(), 2),
                                                                        words.signed(
                                                                                h.levelDb(), 1),
                                                                        words.decimal(
                                                                                h.uncertaintyDb(),
                                                                                1))))
                        .toList());
    }
}
