package offtape.report.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import offtape.core.text.Sentences;
import offtape.report.fault.FaultCatalogue;
import offtape.report.fault.FaultNote;
import offtape.report.fault.Likelihood;
import offtape.report.headline.Find;
import offtape.report.result.Results;
import offtape.report.result.Session;
import offtape.report.result.Verdict;

/** The faults of two sessions, each fault of a channel laid beside itself. */
final class FaultPairs {

    private static final Sentences SAID = Sentences.near(FaultPairs.class);

    private final Results before;
    private final Results after;

    private FaultPairs(Results before, Results after) {
        this.before = before;
        this.after = after;
    }

    /** Which fault of which channel; the channel may be null. */
    private record Place(String code, String channel) {}

    /** What became of each fault that either session tells, by outcome, then by likelihood. */
    static List<FaultChange> of(Results before, Results after) {
        return new FaultPairs(before, after).changes();
    }

    private List<FaultChange> changes() {
        Map<Place, Verdict.Fault> first = placed(faults(before), faults(after));
        Map<Place, Verdict.Fault> second = placed(faults(after), faults(before));
        return Stream.concat(first.keySet().stream(), second.keySet().stream())
                .distinct()
                .map(place -> change(place, first.get(place), second.get(place)))
                .sorted(
                        Comparator.comparing(FaultChange::outcome)
                                .thenComparing(FaultChange::most, Comparator.reverseOrder()))
                .toList();
    }

    private static List<Verdict.Fault> faults(Results results) {
        return results.verdict() == null
                ? List.of()
                : results.verdict().faults().stream()
                        .filter(f -> f.likelihood() >= Likelihood.TOLD)
                        .toList();
    }

    /**
     * The faults by code and channel. One that is on both channels here and on one of them in the
     * other session is taken as one a channel, so that it does not seem to have gone and come.
     */
    private static Map<Place, Verdict.Fault> placed(
            List<Verdict.Fault> faults, List<Verdict.Fault> others) {
        Map<Place, Verdict.Fault> placed = new LinkedHashMap<>();
        for (Verdict.Fault f : faults) {
            boolean isParted =
                    f.channel() == null
                            && others.stream()
                                    .anyMatch(
                                            o -> o.code().equals(f.code()) && o.channel() != null);
            List<String> channels = new ArrayList<>();
            if (isParted) {
                channels.addAll(Find.CHANNELS);
            } else {
                channels.add(f.channel());
            }
            channels.forEach(c -> placed.putIfAbsent(new Place(f.code(), c), f));
        }
        return placed;
    }

    private FaultChange change(Place place, Verdict.Fault first, Verdict.Fault second) {
        Verdict.Fault any = first == null ? second : first;
        Double was = first == null ? null : first.likelihood();
        Double is = second == null ? null : second.likelihood();
        String name = Objects.requireNonNullElse(any.name(), place.code());
        String reason = reason(place.code());
        return reason == null
                ? FaultChange.told(place.code(), name, place.channel(), was, is)
                : new FaultChange(
                        place.code(),
                        name,
                        place.channel(),
                        was,
                        is,
                        FaultChange.Outcome.CANNOT_BE_TOLD,
                        reason);
    }

    /** Why nothing can be told of a fault, or null if it can. */
    private String reason(String code) {
        if (!FaultCatalogue.isKnown(code)) {
            return SAID.say("unknown-fault");
        }
        FaultNote note = FaultCatalogue.of(code);
        return Stream.of(reason(note, before, "first"), reason(note, after, "second"))
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    }

    private static String reason(FaultNote note, Results results, String which) {
        Session session = results.session();
        if (results.verdict() == null || results.verdict().soundLikelihood() == null) {
            return SAID.say("not-looked-for-" + which);
        }
        return note.showsIn(session.mode())
                ? null
                : SAID.say("cannot-show-" + which, session.mode());
    }
}
