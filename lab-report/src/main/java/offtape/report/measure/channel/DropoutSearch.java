package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.Dropout;

/**
 * Short losses of level on the longest steady tone, against the level around them. Demodulation
 * follows the tone through wow; only a loss that lasts counts, so hiss invents none.
 */
public final class DropoutSearch {

    private static final double BAND_HZ = 150;
    private static final double AROUND_S = 0.5;
    private static final double MARGIN_S = 0.1;
    private static final double SHORTEST_TONE_S = 4;

    /** Losses are looked for from here, dB; what rounding of the edge takes is allowed for. */
    private static final double DEPTH_DB = 2.7;

    private static final double LEAST_MS = 8;

    private DropoutSearch() {}

    /** The dropouts of every channel, in order of time. */
    public static List<Dropout> find(ProgrammeReturn ret) {
        List<Dropout> found = new ArrayList<>();
        ret.cues(Cue.Tone.class).stream()
                .filter(t -> t.channels() == ChannelSet.BOTH)
                .filter(t -> ret.sheet().seconds(t.frames()) >= SHORTEST_TONE_S)
                .max(Comparator.comparingLong(Cue::frames))
                .ifPresent(t -> search(ret, t, found));
        found.sort(Comparator.comparingDouble(Dropout::atSeconds).thenComparing(Dropout::channel));
        return found;
    }

    private static void search(ProgrammeReturn ret, Cue.Tone tone, List<Dropout> found) {
        double hz = tone.frequencyHz() * ret.speedRatio(tone.startFrame(), tone.frames());
        double pass = Math.min(BAND_HZ, 0.25 * hz);
        Downconverter converter =
                Downconverter.of(pass, 2 * pass, ret.recording().sampleRateHz(), 1000);
        ProgrammeReturn.Span span = ret.span(tone.startFrame(), tone.frames(), MARGIN_S);
        List<Baseband> bases =
                converter.convert(ret.recording(), span.from(), span.to(), PhaseLaw.steady(hz));
        for (int c = 0; c < ret.channels(); c++) {
            if (bases.get(c).meanPower() > 1e-12) {
                scan(bases.get(c), ProgrammeReturn.channelName(c), found);
            }
        }
    }

    private static void scan(Baseband base, String channel, List<Dropout> found) {
        double[] lossDb = lossDb(base);
        int start = -1;
        for (int k = 0; k <= lossDb.length; k++) {
            boolean low = k < lossDb.length && lossDb[k] > DEPTH_DB;
            if (low && start < 0) {
                start = k;
            } else if (!low && start >= 0) {
                double milliseconds = (k - start) * 1000 / base.rateHz();
                if (milliseconds >= LEAST_MS) {
                    double depth = Arrays.stream(lossDb, start, k).max().orElse(0);
                    found.add(new Dropout(channel, base.seconds(start), milliseconds, depth));
                }
                start = -1;
            }
        }
    }

    /** Loss re the median level of the second around, dB; at most 80. */
    private static double[] lossDb(Baseband base) {
        double[] power = new double[base.size()];
        for (int k = 0; k < power.length; k++) {
            power[k] = base.power(k);
        }
        int reach = (int) (AROUND_S * base.rateHz());
        int hop = Math.max(1, reach / 5);
        double[] lossDb = new double[power.length];
        double usual = 0;
        for (int k = 0; k < power.length; k++) {
            if (k % hop == 0) {
                int from = Math.max(0, Math.min(k - reach, power.length - 2 * reach));
                int to = Math.min(power.length, Math.max(k + reach, 2 * reach));
                double[] around = Arrays.copyOfRange(power, from, to);
                Arrays.sort(around);
                usual = around[around.length / 2];
            }
            lossDb[k] = 10 * Math.log10(usual / Math.max(power[k], 1e-8 * usual + 1e-300));
        }
        return lossDb;
    }
}
