package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.LateMoment;
import offtape.report.locate.ProgrammeReturn;

/**
 * How late a return is while a sweep passes. The phase of the return mixed with the sweep's own is
 * its frequency times the error of place; from the low mids, where that is a small part of a turn,
 * it is followed upwards. Read where the bass filters of a path delay by a few microseconds only.
 */
public final class SweepLateness {

    private static final double FOLLOWED_FROM_HZ = 250;
    private static final double READ_FROM_HZ = 1000;
    private static final double READ_TO_HZ = 10_000;
    private static final double PASS_HZ = 45;
    private static final double RATE_HZ = 250;
    private static final double BLOCK_S = 0.5;
    private static final double START_S = 0.05;

    /** A channel weaker than this share of the louder one's power is not heard. */
    private static final double HEARD = 0.001;

    private SweepLateness() {}

    /** One moment each half second, none if the sweep does not pass the mids. */
    public static List<LateMoment> of(ProgrammeReturn ret, Cue.Sweep cue) {
        double to = Math.min(READ_TO_HZ, Math.min(0.7 * cue.endHz(), 0.3 * rateHz(ret)));
        if (cue.startHz() > FOLLOWED_FROM_HZ || to < 2 * READ_FROM_HZ) {
            return List.of();
        }
        Passage passage = Passage.back(ret, cue);
        Downconverter converter = Downconverter.of(PASS_HZ, 2 * PASS_HZ, rateHz(ret), RATE_HZ);
        List<Baseband> bases = passage.mixed(converter, FOLLOWED_FROM_HZ, to, 1).get(0);
        double sent = sentPhase(ret, cue);
        double least = HEARD * Baseband.loudest(bases).meanPower();
        List<double[]> late = new ArrayList<>();
        for (int c = 0; c < bases.size(); c++) {
            boolean sounds =
                    cue.channels() == ChannelSet.BOTH
                            || cue.channels() == ChannelSet.LEFT == (c == 0);
            if (sounds && bases.get(c).meanPower() > least) {
                late.add(lateSeconds(passage, bases.get(c), sent));
            }
        }
        double start = ret.sheet().seconds(cue.startFrame());
        return late.isEmpty() ? List.of() : blocks(cue.id(), start, passage, bases.get(0), late);
    }

    private static int rateHz(ProgrammeReturn ret) {
        return ret.recording().sampleRateHz();
    }

    /** Phase of the programme's own sweep against its law, radians. */
    private static double sentPhase(ProgrammeReturn ret, Cue.Sweep cue) {
        int rate = ret.programme().audio().sampleRateHz();
        List<Baseband> sent =
                Passage.there(ret, cue)
                        .mixed(
                                Downconverter.of(PASS_HZ, 2 * PASS_HZ, rate, RATE_HZ),
                                FOLLOWED_FROM_HZ,
                                READ_FROM_HZ,
                                1)
                        .get(0);
        return DoubleStream.of(Baseband.loudest(sent).unwrappedPhase()).average().orElse(0);
    }

    /** By how much each sample is later than the passage says. */
    private static double[] lateSeconds(Passage passage, Baseband base, double sent) {
        double[] phase = base.unwrappedPhase();
        double lowest =
                DoubleStream.of(phase)
                        .limit(Math.round(START_S * base.rateHz()))
                        .average()
                        .orElse(0);
        double start = sent + Math.PI * Math.rint((lowest - sent) / Math.PI);
        for (int k = 0; k < phase.length; k++) {
            phase[k] = (start - phase[k]) / (2 * Math.PI * passage.frequencyHz(base, k));
        }
        return phase;
    }

    private static List<LateMoment> blocks(
            String part,
            double startSeconds,
            Passage passage,
            Baseband base,
            List<double[]> channels) {
        List<LateMoment> moments = new ArrayList<>();
        int length = (int) Math.round(BLOCK_S * base.rateHz());
        int first = 0;
        while (first < base.size() && passage.frequencyHz(base, first) < READ_FROM_HZ) {
            first++;
        }
        for (int k = first; k + length <= base.size(); k += length) {
            double late = 0;
            for (double[] channel : channels) {
                for (int i = k; i < k + length; i++) {
                    late += channel[i] / (length * channels.size());
                }
            }
            double recording = base.seconds(k) + (length - 1) / 2.0 / base.rateHz();
            double sweep = passage.toSweep().applyAsDouble(recording);
            double programme = startSeconds + sweep;
            moments.add(new LateMoment(part, programme, recording - programme + late));
        }
        return moments;
    }
}
