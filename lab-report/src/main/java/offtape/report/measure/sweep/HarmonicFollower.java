package offtape.report.measure.sweep;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * Follows the harmonics of a sweep: mixes the return with multiples of the sweep's phase. Flutter
 * turns the n-th harmonic n times as far as the fundamental, so each sample of it is turned back by
 * n times the fundamental's own phase, which undoes the time base; what is left stands still while
 * a band lasts and can be averaged with its sign, which keeps far less noise than a mean of powers.
 */
public final class HarmonicFollower {

    /** The highest harmonic that is followed. */
    static final int HIGHEST = 3;

    private static final double SECTION_OCTAVES = 0.5;
    private static final double LEAST_PASS_HZ = 12;

    /** Three times 0.3 % of the frequency, and as much again for the second pair of sidebands. */
    private static final double PASS_SHARE = 0.02;

    private static final double HIGHEST_HZ = 20_000;
    private static final double SAMPLES_A_BAND = 48;

    private HarmonicFollower() {}

    /** Follows the loudest sweep on both channels through a return, if there is one. */
    public static Optional<FollowedHarmonics> followLoudest(ProgrammeReturn ret) {
        return ret.cues(Cue.Sweep.class).stream()
                .filter(s -> s.channels() == ChannelSet.BOTH)
                .max(Comparator.comparingDouble(Cue.Sweep::levelDb))
                .map(s -> follow(ret, s));
    }

    /** Follows a sweep through a return. */
    static FollowedHarmonics follow(ProgrammeReturn ret, Cue.Sweep cue) {
        Passage passage = Passage.back(ret, cue);
        double speed = Math.max(1, ret.speedRatio(cue.startFrame(), cue.frames()));
        double limit = Math.min(HIGHEST_HZ, 0.46 * ret.recording().sampleRateHz() / speed);
        double top = Math.min(cue.endHz(), limit / 2);
        FollowedHarmonics result =
                new FollowedHarmonics(
                        cue, top, limit, passage.sweep().growthSeconds(), ret.channels());
        double from = result.lowestHz();
        while (from < top) {
            double to = Math.min(top, from * Math.pow(2, SECTION_OCTAVES));
            section(passage, from, to, result);
            from = to;
        }
        return result;
    }

    private static void section(
            Passage passage, double fromHz, double toHz, FollowedHarmonics result) {
        double pass = Math.max(LEAST_PASS_HZ, PASS_SHARE * fromHz);
        Downconverter converter =
                Downconverter.of(
                        pass,
                        2 * pass,
                        passage.source().sampleRateHz(),
                        SAMPLES_A_BAND / result.bandSeconds());
        List<List<Baseband>> orders = passage.mixed(converter, fromHz, toHz, HIGHEST);
        Baseband first = orders.get(0).get(0);
        for (int k = 0; k < first.size(); k++) {
            double hz = passage.frequencyHz(first, k);
            result.add(hz, orders, k, converter.noiseBandwidthHz());
        }
    }
}
