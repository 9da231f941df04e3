package offtape.report.measure.tape;

import java.util.Arrays;
import java.util.stream.IntStream;
import offtape.reference.ReferenceTable;

/** The lists of frequencies that tapes are recorded with, the plainest first. */
enum UsualSeries {
    /** ISO 266, one tone an octave. */
    OCTAVE("octave", "the octave series of ISO 266"),
    /** ISO 266, three tones an octave. */
    THIRD_OCTAVE("third-octave", "the third-octave series of ISO 266"),
    /** Round numbers of older practice. */
    ROUND("round", "the round frequencies of older practice"),
    /** All of them together. */
    USUAL("usual", "usual test frequencies of more than one list");

    private static final String TABLE = "tone-series";

    private final String kind;
    private final String words;

    UsualSeries(String kind, String words) {
        this.kind = kind;
        this.words = words;
    }

    /** Its name in the table and in results. */
    String kind() {
        return kind;
    }

    /** Its name in words. */
    String words() {
        return words;
    }

    /** Its frequencies, Hz, rising. */
    double[] frequenciesHz() {
        ReferenceTable table = ReferenceTable.load(TABLE);
        double[] all =
                IntStream.range(0, table.size())
                        .filter(row -> this == USUAL || table.text(row, "series").equals(kind))
                        .mapToDouble(row -> table.number(row, "frequency"))
                        .distinct()
                        .toArray();
        Arrays.sort(all);
        return all;
    }
}
