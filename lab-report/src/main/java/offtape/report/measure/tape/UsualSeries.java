package offtape.report.measure.tape;

import java.util.Arrays;
import java.util.stream.IntStream;
import offtape.core.text.Sentences;
import offtape.reference.ReferenceTable;

/** The lists of frequencies that tapes are recorded with, the plainest first. */
enum UsualSeries {
    /** ISO 266, one tone an octave. */
    OCTAVE("octave"),
    /** ISO 266, three tones an octave. */
    THIRD_OCTAVE("third-octave"),
    /** Round numbers of older practice. */
    ROUND("round"),
    /** All of them together. */
    USUAL("usual");

    private static final Sentences SAID = Sentences.near(UsualSeries.class);

    private static final String TABLE = "tone-series";

    private final String kind;

    UsualSeries(String kind) {
        this.kind = kind;
    }

    /** Its name in the table and in results. */
    String kind() {
        return kind;
    }

    /** Its name in words. */
    String words() {
        return SAID.say("series-" + kind);
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
