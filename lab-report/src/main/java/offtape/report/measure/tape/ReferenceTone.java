package offtape.report.measure.tape;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.tape.ListedTone;
import offtape.core.text.Sentences;
import offtape.report.result.TapeReference;

/**
 * The tone that is the zero of levels.
 *
 * @param because why it was taken, a plain sentence
 */
record ReferenceTone(NamedTone tone, String because) {

    private static final Sentences SAID = Sentences.near(ReferenceTone.class);

    /** Frequencies that level is set with, the most usual first; common practice, no source. */
    private static final double[] FOR_LEVEL_HZ = {1000, 315, 333, 400, 500, 700};

    private static final double NEAR = 0.03;

    /** Chooses; there is at least one tone. */
    static ReferenceTone of(List<NamedTone> tones) {
        Optional<NamedTone> listed =
                tones.stream().filter(t -> t.isFor(ListedTone.Purpose.REFERENCE)).findFirst();
        if (listed.isPresent()) {
            return new ReferenceTone(listed.get(), SAID.say("reference-listed"));
        }
        for (double hz : FOR_LEVEL_HZ) {
            Optional<NamedTone> first = tones.stream().filter(t -> isNear(t, hz)).findFirst();
            if (first.isPresent()) {
                return new ReferenceTone(first.get(), SAID.say("reference-first"));
            }
        }
        return new ReferenceTone(
                tones.stream()
                        .max(Comparator.comparingDouble(t -> t.heard().loudestDb()))
                        .orElseThrow(),
                SAID.say("reference-strongest"));
    }

    /** Whether a tone has a frequency that level is set with. */
    static boolean isForLevel(NamedTone tone) {
        for (double hz : FOR_LEVEL_HZ) {
            if (isNear(tone, hz)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isNear(NamedTone tone, double hz) {
        return Math.abs(Math.log(tone.aboutHz() / hz)) < NEAR;
    }

    TapeReference record() {
        return new TapeReference(tone.number(), tone.aboutHz(), because);
    }
}
