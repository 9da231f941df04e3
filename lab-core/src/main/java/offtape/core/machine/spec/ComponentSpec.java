package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.copy;
import static offtape.core.machine.spec.Limits.given;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;
import static offtape.core.machine.spec.Limits.withinIfGiven;

import java.util.List;
import offtape.core.standard.TransportGeometry;
import offtape.core.text.Sentences;

/**
 * A steady line of the speed deviation: peak·sin(2π·f·t + phase), t from the start of the
 * programme. Its rate is given either directly or by the rotating part's diameter, f = v/(π·D). A
 * part that is not merely out of centre, such as a pinch roller with a flat spot, has multiples of
 * its rate as well: Σ peak·h(n)·sin(n·(2π·f·t + phase)), so that the shape of a turn is the same
 * whatever its phase.
 *
 * @param name the part it comes from, or null
 * @param frequencyHz 0.02 to 500 Hz, or null if the diameter is given
 * @param diameterMm 1 to 500 mm, or null if the frequency is given
 * @param peakPercent peak deviation, 0 to 10 %
 * @param phaseDegrees phase at the programme's first frame in the pass that reads; default 0
 * @param recordPhaseDegrees phase in the pass that wrote ({@code two-pass} only); where absent it
 *     is drawn from the seed
 * @param harmonics peaks of the rate itself and of its multiples 2, 3, … re {@code peakPercent}, 0
 *     to 10 each, at most 16; default the rate alone, [1]. A stated {@code frequencyHz} times their
 *     number must not pass 500 Hz
 */
public record ComponentSpec(
        String name,
        Double frequencyHz,
        Double diameterMm,
        Double peakPercent,
        Double phaseDegrees,
        Double recordPhaseDegrees,
        List<Double> harmonics) {

    private static final Sentences SAID = Sentences.near(ComponentSpec.class);

    private static final int MOST_HARMONICS = 16;
    private static final double HIGHEST_HZ = 500;

    /** Checks the limits and fills in defaults. */
    public ComponentSpec {
        withinIfGiven("frequencyHz", frequencyHz, 0.02, 500, "Hz");
        withinIfGiven("diameterMm", diameterMm, 1, 500, "mm");
        require((frequencyHz == null) != (diameterMm == null), SAID.say("either-rate-or-diameter"));
        given("peakPercent", peakPercent);
        within("peakPercent", peakPercent, 0, 10, "%");
        phaseDegrees =
                within(
                        "phaseDegrees",
                        orElse(phaseDegrees, 0.0),
                        -360,
                        360,
                        SAID.say("unit.degrees"));
        withinIfGiven(
                "recordPhaseDegrees", recordPhaseDegrees, -360, 360, SAID.say("unit.degrees"));
        harmonics = copy("harmonics", harmonics, MOST_HARMONICS);
        harmonics.forEach(h -> within("harmonics", h, 0, 10, ""));
        harmonics = harmonics.isEmpty() ? List.of(1.0) : harmonics;
        require(
                frequencyHz == null || frequencyHz * harmonics.size() <= HIGHEST_HZ,
                SAID.say("harmonics-too-high"));
    }

    /** The highest rate in hertz, of the last multiple. */
    public double highestRateHz(double tapeSpeedMmPerS) {
        return harmonics.size() * rateHz(tapeSpeedMmPerS);
    }

    /** Peak deviation of the n-th multiple, percent; n from 1 to the number of harmonics. */
    public double peakPercent(int multiple) {
        return peakPercent * harmonics.get(multiple - 1);
    }

    /** The rate in hertz at a tape speed in millimetres per second. */
    public double rateHz(double tapeSpeedMmPerS) {
        return frequencyHz != null
                ? frequencyHz
                : TransportGeometry.rotationHz(tapeSpeedMmPerS, diameterMm);
    }
}
