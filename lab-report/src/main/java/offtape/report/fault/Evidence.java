package offtape.report.fault;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import offtape.report.fault.rank.Course;
import offtape.report.fault.rank.Ranked;
import offtape.report.fault.rank.Sound;
import offtape.report.fault.symptom.Joining;
import offtape.report.fault.symptom.Reading;
import offtape.report.fault.symptom.Symptom;
import offtape.report.fault.symptom.Symptoms;

/** The figures of a session that speak for a fault, beside what sound machines show. */
final class Evidence {

    /** A figure speaks for a fault if both move by so many spreads of sound machines. */
    private static final double SPEAKS = 1.5;

    private static final int MOST = 4;

    /** Figures of one kind, such as a response at several frequencies, are not all told. */
    private static final int MOST_OF_A_KIND = 2;

    private final Sound sound;
    private final Map<String, Reading> readings;

    Evidence(Sound sound, Map<String, Reading> readings) {
        this.sound = sound;
        this.readings = readings;
    }

    /**
     * A symptom that this session shows and whose spread among sound machines is known.
     *
     * @param mean of sound machines, on the symptom's scale
     * @param spread of sound machines, standard deviation
     * @param shown place of the session on the scale
     */
    record Shown(Symptom symptom, double mean, double spread, double shown) {

        /** Where the symptom would be with a fault in spreads of sound machines from there. */
        double off(double expected) {
            return (shown - expected) / spread;
        }
    }

    /** What the session shows of a symptom. */
    Optional<Shown> shown(Symptom symptom) {
        int row = sound.symptoms().indexOf(symptom.key());
        Reading reading = readings.get(symptom.key());
        if (row < 0 || reading == null) {
            return Optional.empty();
        }
        double spread =
                Math.sqrt(
                        sound.covariance(row, row)
                                + symptom.grain() * symptom.grain()
                                + reading.sigma() * reading.sigma());
        return Optional.of(new Shown(symptom, sound.mean()[row], spread, reading.scaled()));
    }

    /** Where a symptom is expected under faults together, on its scale. */
    double expected(Shown s, List<Ranked> faults) {
        double at = s.mean();
        for (Ranked fault : faults) {
            Optional<Course.Move> move = fault.course().move(s.symptom().key());
            if (move.isPresent()) {
                double place = move.get().at(fault.severity());
                boolean turned = fault.mirrored() && s.symptom().mirrored();
                at =
                        s.symptom().joining() == Joining.SUM
                                ? at + (turned ? -place : place)
                                : Math.max(at, place);
            }
        }
        return at;
    }

    /** Plain sentences, what speaks loudest first. */
    List<String> of(Ranked fault) {
        List<Shown> speaking =
                Symptoms.all().stream()
                        .flatMap(s -> shown(s).stream())
                        .filter(s -> strength(s, fault) >= SPEAKS)
                        .sorted(
                                Comparator.comparingDouble((Shown s) -> strength(s, fault))
                                        .reversed())
                        .toList();
        List<String> told = new ArrayList<>();
        List<String> kinds = new ArrayList<>();
        for (Shown s : speaking) {
            String kind = s.symptom().key().split("-")[0];
            long before = kinds.stream().filter(kind::equals).count();
            if (told.size() < MOST && before < MOST_OF_A_KIND) {
                told.add(SymptomWords.beside(s));
                kinds.add(kind);
            }
        }
        return told;
    }

    /** By how many spreads the session moves the way that the fault does, at most as far. */
    private double strength(Shown s, Ranked fault) {
        double expected = expected(s, List.of(fault)) - s.mean();
        double seen = s.shown() - s.mean();
        return expected * seen <= 0 ? 0 : Math.min(Math.abs(expected), Math.abs(seen)) / s.spread();
    }
}
