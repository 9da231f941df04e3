package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.report.result.Noise;

/** The noise spectra of all channels in one table. */
final class NoiseTable {

    private NoiseTable() {}

    /** The table: a row a band that any channel has, a column a channel. */
    static DataTable of(Wording words, List<Noise> drawn) {
        List<String> heads = new ArrayList<>(List.of(words.say("noise.head-middle")));
        drawn.forEach(
                n ->
                        heads.add(
                                words.say(
                                        "noise.head-of-channel",
                                        words.sentence(words.channel(n.channel())))));
        List<List<String>> rows =
                drawn.stream()
                        .flatMapToDouble(n -> Arrays.stream(n.spectrum().frequencyHz()))
                        .distinct()
                        .sorted()
                        .mapToObj(f -> row(words, drawn, f))
                        .toList();
        return new DataTable(words.say("noise.spectrum"), List.copyOf(heads), rows);
    }

    private static List<String> row(Wording words, List<Noise> drawn, double hz) {
        List<String> cells = new ArrayList<>(List.of(words.frequency(hz)));
        drawn.forEach(n -> cells.add(level(words, n, hz)));
        return List.copyOf(cells);
    }

    private static String level(Wording words, Noise noise, double hz) {
        int i = Arrays.binarySearch(noise.spectrum().frequencyHz(), hz);
        return i < 0 ? DataTable.NOTHING : words.signed(noise.spectrum().levelDb()[i], 1);
    }
}
