package offtape.report.fault;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import offtape.core.text.Sentences;
import offtape.report.fault.rank.Ranked;
import offtape.report.fault.symptom.Symptoms;

/** How a fault was told from those that look like it, in figures of the session. */
final class LookAlikes {

    private static final Sentences SAID = Sentences.near(LookAlikes.class);

    private static final int MOST = 3;

    /** A figure that lies less off than this with the other fault tells nothing, in spreads. */
    private static final double TELLS = 2;

    private final Evidence evidence;
    private final List<Ranked> sole;

    /**
     * Look-alikes of a session.
     *
     * @param sole each fault as if it were the only one, best first
     */
    LookAlikes(Evidence evidence, List<Ranked> sole) {
        this.evidence = evidence;
        this.sole = sole;
    }

    /**
     * Plain sentences.
     *
     * @param beside other faults that are there
     */
    List<String> of(FaultNote note, Ranked fault, List<Ranked> beside) {
        List<String> told = new ArrayList<>();
        others(note, beside).limit(MOST).forEach(o -> told.add(told(o, fault, beside)));
        return told;
    }

    /** What the catalogue names and is not there itself. */
    private Stream<Ranked> others(FaultNote note, List<Ranked> beside) {
        return note.unlike().stream()
                .map(FaultNote.LookAlike::code)
                .filter(c -> beside.stream().noneMatch(b -> b.code().equals(c)))
                .flatMap(c -> sole.stream().filter(s -> s.code().equals(c)).limit(1));
    }

    private String told(Ranked other, Ranked fault, List<Ranked> beside) {
        String name = FaultCatalogue.of(other.code()).name();
        List<Ranked> withOther = with(beside, other);
        List<Ranked> withFault = with(beside, fault);
        Optional<Evidence.Shown> telling =
                Symptoms.all().stream()
                        .flatMap(s -> evidence.shown(s).stream())
                        .max(Comparator.comparingDouble(s -> gain(s, withOther, withFault)));
        return telling.filter(s -> gain(s, withOther, withFault) >= TELLS)
                .map(
                        s ->
                                SAID.say("unlike", name)
                                        + " "
                                        + SymptomWords.against(s, evidence.expected(s, withOther)))
                .orElse(
                        SAID.say("nearly-the-same", name)
                                + " "
                                + FaultCatalogue.of(other.code()).confirm());
    }

    private static List<Ranked> with(List<Ranked> beside, Ranked one) {
        return Stream.concat(
                        beside.stream().filter(b -> !b.code().equals(one.code())), Stream.of(one))
                .toList();
    }

    /** By how many spreads a figure lies farther off with the other fault than with this one. */
    private double gain(Evidence.Shown s, List<Ranked> withOther, List<Ranked> withFault) {
        return Math.abs(s.off(evidence.expected(s, withOther)))
                - Math.abs(s.off(evidence.expected(s, withFault)));
    }
}
