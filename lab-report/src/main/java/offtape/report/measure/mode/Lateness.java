package offtape.report.measure.mode;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.programme.Cue;
import offtape.report.locate.LateMoment;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.SweepLateness;
import offtape.report.measure.tone.ToneLateness;

/**
 * How late a return is over the whole programme: markers and sweeps tell it without doubt, long
 * tones, whose phase leaves whole periods open, then more finely.
 */
final class Lateness {

    private Lateness() {}

    /** The course of a return recorded while the programme played; empty if too little is heard. */
    static Optional<LatenessFit> of(ProgrammeReturn ret) {
        List<LateMoment> moments = new ArrayList<>(markers(ret));
        ret.cues(Cue.Sweep.class).forEach(s -> moments.addAll(SweepLateness.of(ret, s)));
        Optional<LatenessFit> first = LatenessFit.of(moments);
        first.ifPresent(
                fit ->
                        ret.cues(Cue.Tone.class)
                                .forEach(t -> moments.addAll(ToneLateness.of(ret, t, fit::at))));
        return LatenessFit.of(moments);
    }

    private static List<LateMoment> markers(ProgrammeReturn ret) {
        double half = ret.sheet().seconds(ret.sheet().frames()) / 2;
        List<LateMoment> moments = new ArrayList<>();
        for (Cue.Marker m : ret.cues(Cue.Marker.class)) {
            double middle =
                    ret.sheet().seconds(m.startFrame()) + ret.sheet().seconds(m.frames()) / 2;
            boolean heard =
                    middle < half
                            ? ret.location().startMarkerFound()
                            : ret.location().endMarkerFound();
            if (heard) {
                double at = ret.map().recordingSeconds(middle);
                moments.add(new LateMoment(m.id(), middle, at - middle));
            }
        }
        return moments;
    }
}
