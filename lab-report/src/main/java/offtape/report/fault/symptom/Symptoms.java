package offtape.report.fault.symptom;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import offtape.core.unit.Quantity;
import offtape.report.result.Results;

/** All symptoms, and what a session shows of them. What it does not tell is left out. */
public final class Symptoms {

    private static final List<Symptom> ALL =
            Stream.of(
                            ResponseSymptoms.ALL,
                            DistortionSymptoms.ALL,
                            NoiseSymptoms.ALL,
                            PairSymptoms.ALL,
                            SpeedSymptoms.ALL)
                    .flatMap(List::stream)
                    .toList();

    private final Map<String, Reading> readings = new LinkedHashMap<>();

    private Symptoms() {}

    /** All there are, always in this order. */
    public static List<Symptom> all() {
        return ALL;
    }

    /** What a session shows, by the symptoms' keys. */
    public static Map<String, Reading> of(Results results) {
        Symptoms found = new Symptoms();
        ResponseSymptoms.read(results, found);
        DistortionSymptoms.read(results, found);
        NoiseSymptoms.read(results, found);
        PairSymptoms.read(results, found);
        SpeedSymptoms.read(results, found);
        return found.readings;
    }

    /** Takes a known figure down. */
    void put(Symptom symptom, Quantity figure) {
        if (figure != null && figure.isKnown()) {
            put(symptom, figure.value(), figure.uncertainty() / 2);
        }
    }

    /**
     * Takes a value down.
     *
     * @param sigma its standard deviation
     */
    void put(Symptom symptom, double value, double sigma) {
        double scaled = symptom.scale().on(value);
        if (Double.isFinite(scaled)) {
            readings.put(symptom.key(), new Reading(scaled, sigma * symptom.scale().slope(value)));
        }
    }
}
