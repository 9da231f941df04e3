package offtape.report.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import offtape.report.compare.Comparison;
import offtape.report.compare.FaultChange;
import offtape.report.compare.FaultChange.Outcome;
import offtape.report.compare.PairWords;
import offtape.report.result.Results;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is told of faults in two sessions, from verdicts made by hand. */
class FaultPairsTest {

    private static List<FaultChange> faults(Results before, Results after) {
        return Comparison.of(before, after, List.of()).faults();
    }

    /** Bounds of 0.5 and 0.15 themselves count to what is above. */
    @ParameterizedTest
    @CsvSource({
        "0.87,     , WENT,             gone,                 A only",
        "0.5,  0.149, WENT,            gone,                 A only",
        "0.5,  0.15, MAY_HAVE_GONE,    may have gone,        'A, perhaps both'",
        "0.9,  0.49, MAY_HAVE_GONE,    may have gone,        'A, perhaps both'",
        "0.3,      , MAY_HAVE_GONE,    may have gone,        perhaps A",
        "0.9,  0.5,  STAYED,           still there,          both",
        "0.5,  0.99, STAYED,           still there,          both",
        ",     0.5,  CAME,             new,                  B only",
        "0.1,  0.9,  CAME,             new,                  B only",
        "0.2,  0.8,  MAY_HAVE_COME,    may have come,        'B, perhaps both'",
        ",     0.49, MAY_HAVE_COME,    may have come,        perhaps B",
        "0.2,  0.4,  MAY_HAVE_STAYED,  may be there in both, perhaps both",
    })
    void outcomes(Double before, Double after, Outcome outcome, String served, String owner) {
        Results first = Pairs.named("A", before);
        Results second = Pairs.named("A", after);
        Results other = Pairs.named("B", after);
        FaultChange change = faults(first, second).get(0);
        assertEquals(outcome, change.outcome());
        assertNull(change.reason());
        Comparison service = Comparison.of(first, second, List.of());
        assertEquals(served, PairWords.of(service).outcome(change));
        Comparison machines = Comparison.of(first, other, List.of());
        assertEquals(owner, PairWords.of(machines).outcome(machines.faults().get(0)));
    }

    @Test
    void whatNeitherTellsIsLeftOut() {
        assertEquals(List.of(), faults(Pairs.named("A", 0.1), Pairs.named("A", 0.149)));
    }

    @Test
    void onTheOtherChannelItIsAnotherFault() {
        Results before = Pairs.with("two-pass", 0.1, Pairs.fault("dirty-head", "left", 0.9));
        Results after = Pairs.with("two-pass", 0.1, Pairs.fault("dirty-head", "right", 0.8));
        assertEquals(
                List.of("WENT left", "CAME right"),
                faults(before, after).stream().map(f -> f.outcome() + " " + f.channel()).toList());
    }

    /** A head that was dirty on both channels and is clean on one has not become dirty. */
    @Test
    void onBothChannelsItIsPartedWhereTheOtherSessionPartsIt() {
        Results both = Pairs.with("two-pass", 0.1, Pairs.fault("dirty-head", null, 0.9));
        Results left = Pairs.with("two-pass", 0.1, Pairs.fault("dirty-head", "left", 0.8));
        assertEquals(
                List.of("WENT right", "STAYED left"),
                faults(both, left).stream().map(f -> f.outcome() + " " + f.channel()).toList());
        assertNull(faults(both, both).get(0).channel());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "two-pass | 0.1 | two-pass |     | hiss  | not looked for in the second session.",
                "two-pass |     | two-pass | 0.1 | hiss  | not looked for in the first session.",
                "         | 0.1 | off-tape | 0.1 | speed-setting | of mode off-tape, cannot show",
                "two-pass | 0.1 | two-pass | 0.1 | later | This release does not know the fault.",
            })
    void whatASessionCannotShowCannotBeTold(
            String mode,
            Double sound,
            String other,
            Double otherSound,
            String code,
            String reason) {
        Results before = Pairs.with(mode, sound, Pairs.fault(code, null, 0.9));
        Results after = Pairs.with(other, otherSound);
        FaultChange change = faults(before, after).get(0);
        assertEquals(Outcome.CANNOT_BE_TOLD, change.outcome());
        assertTrue(change.reason().contains(reason), change.reason());
        assertEquals(List.of(), faults(after, after));
    }

    @Test
    void likelihoodsGoByOutcomeThenByLikelihood() {
        Results before =
                Pairs.with(
                        "two-pass",
                        0.01,
                        Pairs.fault("hiss", null, 0.6),
                        Pairs.fault("belt", null, 0.7),
                        Pairs.fault("capstan", null, 0.9));
        Results after = Pairs.with("two-pass", 0.2, Pairs.fault("hiss", null, 0.55));
        assertEquals(
                Arrays.asList("capstan", "belt", "hiss"),
                faults(before, after).stream().map(FaultChange::code).toList());
    }
}
