package offtape.report.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.report.result.Noise;

/** The noise spectra of all channels in one table. */
final class NoiseTable {

    private NoiseTable() {}

    /** The table: a row a band that any channel has, a column a channel. */
    static DataTable of(List<Noise> drawn) {
        List<String> heads = new ArrayList<>(List.of("Middle of the band"));
        drawn.forEach(n -> heads.add(Words.sentence(n.channel()) + ", dB re reference"));
        List<List<String>> rows =
                drawn.stream()
                        .flatMapToDouble(n -> Arrays.stream(n.spectrum().frequencyHz()))
                        .distinct()
                        .sorted()
                        .mapToObj(f -> row(drawn, f))
                        .toList();
        return new DataTable("noise in third-octave bands", List.copyOf(heads), rows);
    }

    private static List<String> row(List<Noise> drawn, double hz) {
        List<String> cells = new ArrayList<>(List.of(Numbers.frequency(hz)));
        drawn.forEach(n -> cells.add(level(n, hz)));
        return List.copyOf(cells);
    }

    private static String level(Noise noise, double hz) {
        int i = Arrays.binarySearch(noise.spectrum().frequencyHz(), hz);
        return i < 0 ? DataTable.NOTHING : Numbers.signed(noise.spectrum().levelDb()[i], 1);
    }
}
