package offtape.report.measure.pass;

import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.SincInterpolator;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.speed.SpeedTone;
import offtape.report.measure.speed.ToneCourse;

/**
 * The speed deviation of one replay along the tape: over the time at which the programme wrote each
 * place. Places come from adding up the deviation. Where the whole lies beside another replay is
 * known from the edges of the tone to its nearest turn, and within a turn from its phase, whose
 * zero is the same for all replays through the same electronics.
 */
final class TapeCourse {

    /** Values a second of programme on the common axis. */
    static final double RATE_HZ = 1000;

    private static final double BAND_HZ = 40;

    private final ToneCourse tone;
    private final double[] place;
    private final double turns;
    private final ToneEdges edges;

    private TapeCourse(ToneCourse tone, double[] place, double turns, ToneEdges edges) {
        this.tone = tone;
        this.place = place;
        this.turns = turns;
        this.edges = edges;
    }

    /** The course of a return; empty if its speed tone was not heard. */
    static Optional<TapeCourse> of(ProgrammeReturn ret) {
        return SpeedTone.course(ret).map(tone -> of(ret, tone));
    }

    private static TapeCourse of(ProgrammeReturn ret, ToneCourse tone) {
        double[] place = places(tone, ret.map());
        return new TapeCourse(
                tone,
                place,
                turns(ret, tone, place),
                ToneEdges.of(ret.recording(), tone, t -> at(tone, place, t)));
    }

    /** Programme time of each value, the mean lateness that of the map. */
    private static double[] places(ToneCourse tone, TimeMap map) {
        double[] percent = tone.percent();
        double[] place = new double[percent.length];
        double sum = 0;
        double ahead = 0;
        for (int k = 0; k < place.length; k++) {
            double mean = k == 0 ? 0 : (percent[k] + percent[k - 1]) / 2;
            sum += k == 0 ? 0 : (1 + mean / 100) / tone.rateHz();
            place[k] = sum;
            ahead += (map.programmeSeconds(tone.seconds(k)) - sum) / place.length;
        }
        for (int k = 0; k < place.length; k++) {
            place[k] += ahead;
        }
        return place;
    }

    /** Mean phase of the tone against one that follows the places, in turns. */
    private static double turns(ProgrammeReturn ret, ToneCourse tone, double[] place) {
        Downconverter converter =
                Downconverter.of(BAND_HZ, 2 * BAND_HZ, ret.recording().sampleRateHz());
        List<Baseband> bases =
                converter.convert(
                        ret.recording(),
                        tone.firstSeconds(),
                        tone.seconds(place.length - 1),
                        t -> 2 * Math.PI * tone.toneHz() * at(tone, place, t));
        double re = 0;
        double im = 0;
        for (Baseband base : bases) {
            for (int k = 0; k < base.size(); k++) {
                re += base.re()[k];
                im += base.im()[k];
            }
        }
        return Math.atan2(im, re) / (2 * Math.PI);
    }

    private static double at(ToneCourse tone, double[] place, double seconds) {
        double index = (seconds - tone.firstSeconds()) * tone.rateHz();
        int k = (int) Math.max(0, Math.min(place.length - 2, Math.floor(index)));
        return place[k] + (index - k) * (place[k + 1] - place[k]);
    }

    /** Fastest change of speed that the tone can show, Hz. */
    double bandHz() {
        return tone.bandHz();
    }

    /** Nominal frequency of the tone, Hz. */
    double toneHz() {
        return tone.toneHz();
    }

    /** Programme time at which it begins, as laid out beside another course. */
    double from(TapeCourse first) {
        return place[0] + shift(first);
    }

    /** Programme time at which it ends, as laid out beside another course. */
    double to(TapeCourse first) {
        return place[place.length - 1] + shift(first);
    }

    /** What brings the tone's edges near those of another course and its phase upon theirs. */
    private double shift(TapeCourse first) {
        double apart = turns - first.turns;
        double later = tone.toneHz() * edges.laterThan(first.edges);
        return (apart - Math.rint(apart + later)) / tone.toneHz();
    }

    /**
     * The deviation at even steps along the tape, percent, about its mean.
     *
     * @param first the course whose places hold for all
     * @param from programme time of the first value, seconds
     * @param count number of values, {@link #RATE_HZ} a second
     */
    double[] along(TapeCourse first, double from, int count) {
        double[] x = new double[count];
        double shift = shift(first);
        double mean = 0;
        int k = 0;
        for (int m = 0; m < count; m++) {
            double wanted = from + m / RATE_HZ - shift;
            while (k < place.length - 2 && place[k + 1] <= wanted) {
                k++;
            }
            double index = k + (wanted - place[k]) / (place[k + 1] - place[k]);
            x[m] = SincInterpolator.at(tone.percent(), index);
            mean += x[m] / count;
        }
        for (int m = 0; m < count; m++) {
            x[m] -= mean;
        }
        return x;
    }
}
