package offtape.report.result;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import offtape.core.json.Range;
import offtape.core.text.Sentences;

/**
 * A harmonic of a sweep over the frequency of its fundamental.
 *
 * @param order 2 or 3
 * @param points one entry a sixth of an octave, of rising frequency
 */
public record HarmonicCurve(int order, List<Point> points) {

    private static final Sentences SAID = Sentences.near(HarmonicCurve.class);

    /** Copies the list so that the curve cannot change. */
    public HarmonicCurve {
        points = List.copyOf(points);
    }

    /**
     * The harmonic at one frequency.
     *
     * @param frequencyHz frequency of the fundamental in the programme
     * @param percent harmonic re fundamental in the return, noise taken out; null where it does not
     *     stand four times above its floor
     * @param uncertaintyPercent expanded uncertainty (k = 2) of that, or null with it
     * @param floorPercent what noise alone would read, rms
     * @param phaseDegrees phase of the harmonic less {@code order} times that of the fundamental,
     *     both cosines, −180 to 180; the tape's motion is not in it. A third harmonic of a curve
     *     that flattens has 180 on a path that turns no phase. Null where the harmonic is not told,
     *     and in sessions of an earlier release
     * @param phaseUncertaintyDegrees expanded uncertainty (k = 2) of that, or null with it
     */
    public record Point(
            double frequencyHz,
            Double percent,
            Double uncertaintyPercent,
            double floorPercent,
            @JsonInclude(JsonInclude.Include.NON_NULL) Double phaseDegrees,
            @JsonInclude(JsonInclude.Include.NON_NULL) Double phaseUncertaintyDegrees) {

        /** Checks that what is told comes with its uncertainty. */
        public Point {
            Range.require(
                    (percent == null) == (uncertaintyPercent == null),
                    SAID.say("harmonic-with-uncertainty"));
            Range.require(
                    (phaseDegrees == null) == (phaseUncertaintyDegrees == null),
                    SAID.say("phase-with-uncertainty"));
        }

        /** A harmonic whose phase is not told. */
        public Point(
                double frequencyHz,
                Double percent,
                Double uncertaintyPercent,
                double floorPercent) {
            this(frequencyHz, percent, uncertaintyPercent, floorPercent, null, null);
        }

        /** Whether the harmonic stands above the noise. */
        public boolean standsOut() {
            return percent != null;
        }
    }
}
