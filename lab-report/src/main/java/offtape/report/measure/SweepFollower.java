package offtape.report.measure;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.ExponentialSweep;
import offtape.report.locate.TimeMap;

/**
 * Follows a sweep in time: mixes the return with the phase that the sweep had, keeps what lies
 * close to it, and takes the power over the time each narrow band lasts. Unlike a deconvolution
 * this does not turn changes of speed into changes of level: flutter moves the phase of the mixed
 * signal, not its power. Harmonics lie at least an octave away and fall out. The programme's own
 * sweep is treated in the same way, so that fades and filters cancel.
 */
final class SweepFollower {

    /** Bands an octave. */
    static final int BANDS = 48;

    private static final double SECTION_OCTAVES = 0.5;
    private static final double LEAST_PASS_HZ = 6;
    private static final double PASS_SHARE = 0.025;

    private final Cue.Sweep cue;
    private final ExponentialSweep sweep;
    private final double start;

    SweepFollower(Cue.Sweep cue, int sheetRateHz) {
        this.cue = cue;
        this.sweep = ExponentialSweep.of(cue, sheetRateHz);
        this.start = (double) cue.startFrame() / sheetRateHz;
    }

    /** Number of the band that holds a frequency; band 0 is around 1 kHz. */
    static int band(double hz) {
        return (int) Math.rint(BANDS * Math.log(hz / 1000) / Math.log(2));
    }

    /** Middle of a band, hertz. */
    static double bandHz(int band) {
        return 1000 * Math.pow(2, (double) band / BANDS);
    }

    /** Follows the sweep through a return. */
    FollowedSweep follow(ProgrammeReturn ret) {
        int first = band(sweep.startHz()) + 1;
        int last = band(highestHz(ret)) - 1;
        int bands = Math.max(0, last - first + 1);
        FollowedSweep result =
                new FollowedSweep(cue, first, bands, ret.channels(), 1 / bandsASecond());
        double top = bandHz(last);
        TimeMap own = TimeMap.straight(0, 1, ret.sheet().seconds(ret.sheet().frames()));
        double from = sweep.startHz();
        while (from < top) {
            double to = Math.min(top, from * Math.pow(2, SECTION_OCTAVES));
            double wanted = Math.max(LEAST_PASS_HZ, PASS_SHARE * from);
            double pass = Math.min(wanted, 0.3 * from);
            section(ret.recording(), ret.map(), from, to, pass, result::addReturn);
            int side = cue.channels() == ChannelSet.RIGHT ? 1 : 0;
            section(
                    ret.programme().audio(),
                    own,
                    from,
                    to,
                    pass,
                    (band, bases, k, width) ->
                            result.addProgramme(
                                    band, bases.get(Math.min(side, bases.size() - 1)), k));
            from = to;
        }
        return result;
    }

    private double highestHz(ProgrammeReturn ret) {
        double speed = ret.speedRatio(cue.startFrame(), cue.frames());
        double half = ret.recording().sampleRateHz() / 2.0;
        double room = half / (1 + 2.2 * PASS_SHARE) / Math.max(1, speed);
        double own = ret.programme().audio().sampleRateHz() / 2.0 / (1 + 2.2 * PASS_SHARE);
        return Math.min(sweep.endHz(), Math.min(room, own));
    }

    private double bandsASecond() {
        return BANDS / (Math.log(2) * sweep.growthSeconds());
    }

    /** Receives one sample of the mixed signal. */
    private interface Receiver {
        void sample(int band, List<Baseband> bases, int k, double noiseWidthHz);
    }

    private void section(
            AudioSource source,
            TimeMap map,
            double fromHz,
            double toHz,
            double pass,
            Receiver receiver) {
        Downconverter converter =
                Downconverter.of(pass, 2 * pass, source.sampleRateHz(), 6 * bandsASecond());
        double from = map.recordingSeconds(start + sweep.timeSeconds(fromHz));
        double to = map.recordingSeconds(start + sweep.timeSeconds(toHz));
        List<Baseband> bases =
                converter.convert(
                        source, from, to, t -> sweep.phaseRadians(map.programmeSeconds(t) - start));
        double width = converter.filter().noiseBandwidthHz();
        for (int k = 0; k < bases.get(0).size(); k++) {
            double t = map.programmeSeconds(bases.get(0).seconds(k)) - start;
            receiver.sample(band(sweep.frequencyHz(t)), bases, k, width);
        }
    }
}
