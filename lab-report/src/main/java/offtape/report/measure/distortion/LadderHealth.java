package offtape.report.measure.distortion;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.core.unit.Quantity;
import offtape.report.result.Distortion;
import offtape.report.result.FittedCurve;
import offtape.report.result.HealthNote;
import offtape.report.result.LadderStep;

/** What the shape of the ladders' curves says about the recording. */
public final class LadderHealth {

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
                String.format(
                        Locale.ROOT,
                        "The step at %+.0f dB of the ladder at %.0f Hz stands off the smooth curve of the"
                                + " others on the %s channel: a dropout, a click or a change of gain"
                                + " during it. It was left out of the levels read from the curve; record"
                                + " the ladder again if it matters.",
                        s.recordLevelDb(),
                        d.frequencyHz(),
                        d.channel()));
    }

    private static void slope(Distortion d, List<HealthNote> notes) {
        Quantity slope = d.k3Slope();
        if (!slope.isKnown()) {
            return;
        }
        String found =
                String.format(
                        Locale.ROOT,
                        "K3 of the ladder at %.0f Hz rises by %.1f dB per dB of level on the %s channel"
                                + " where tape gives about 2: ",
                        d.frequencyHz(),
                        slope.value(),
                        d.channel());
        if (slope.value() + slope.uncertainty() < FLAT_SLOPE) {
            notes.add(
                    new HealthNote(
                            "warning",
                            "distortion-not-of-tape",
                            found
                                    + "this distortion comes from an amplifier or the interface, or the"
                                    + " signal never was on tape."));
        } else if (slope.value() - slope.uncertainty() > STEEP_SLOPE) {
            notes.add(
                    new HealthNote(
                            "warning",
                            "distortion-abrupt",
                            found
                                    + "an amplifier or a converter clips before the tape saturates."
                                    + " Lower the gain ahead of it."));
        }
    }

    private static boolean rough(FittedCurve curve) {
        return curve != null && curve.misfit() > ROUGH;
    }

    private static HealthNote rough(Distortion d) {
        return new HealthNote(
                "note",
                "ladder-rough",
                String.format(
                        Locale.ROOT,
                        "The steps of the ladder at %.0f Hz on the %s channel scatter more about a smooth"
                                + " curve than their noise explains: the level wavers, or several steps"
                                + " were disturbed. The uncertainties hold it.",
                        d.frequencyHz(),
                        d.channel()));
    }
}
