package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.HealthNote;
import offtape.report.result.LadderStep;

/** What the shape of the ladders' curves says about the recording. */
public final class LadderHealth {

    private static final Sentences SAID = Sentences.near(LadderHealth.class);

    /** K3 of a symmetrical characteristic rises by 2 dB per dB; below this it is not the tape's. */
    private static final double FLAT_SLOPE = 1.2;

    /** Above this something clips. */
    private static final double STEEP_SLOPE = 4;

    /** Steps that scatter this many times more than noise lets expect are worth a remark. */
    private static final double ROUGH = 3;

    private LadderHealth() {}

    /** Notes on all ladders. */
    public static List<HealthNote> notes(List<Distortion> ladders) {
        List<HealthNote> notes = new ArrayList<>();
        for (Distortion d : ladders) {
            d.steps().stream()
                    .filter(s -> s.noise().leftOut())
                    .forEach(s -> notes.add(stepOff(d, s)));
            slope(d, notes);
            if (rough(d.k3Curve()) || rough(d.replayCurve())) {
                notes.add(rough(d));
            }
        }
        return notes;
    }

    private static HealthNote stepOff(Distortion d, LadderStep s) {
        return new HealthNote(
                "warning",
                "ladder-step-off",
                SAID.say("step-off", s.recordLevelDb(), d.frequencyHz(), d.channel()));
    }

    private static void slope(Distortion d, List<HealthNote> notes) {
        Quantity slope = d.k3Slope();
        if (!slope.isKnown()) {
            return;
        }
        if (slope.value() + slope.uncertainty() < FLAT_SLOPE) {
            notes.add(slope(d, "distortion-not-of-tape", "not-of-tape"));
        } else if (slope.value() - slope.uncertainty() > STEEP_SLOPE) {
            notes.add(slope(d, "distortion-abrupt", "abrupt"));
        }
    }

    private static HealthNote slope(Distortion d, String code, String key) {
        return new HealthNote(
                "warning", code, SAID.say(key, d.frequencyHz(), d.k3Slope().value(), d.channel()));
    }

    private static boolean rough(FittedCurve curve) {
        return curve != null && curve.misfit() > ROUGH;
    }

    private static HealthNote rough(Distortion d) {
        return new HealthNote(
                "note", "ladder-rough", SAID.say("rough", d.frequencyHz(), d.channel()));
    }
}
