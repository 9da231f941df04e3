package offtape.report.measure.erasure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.tone.FoundTone;
import offtape.report.measure.tone.ToneRange;
import offtape.report.measure.tone.ToneSearch;
import offtape.report.result.Erasure;

/**
 * Reads a replay of a tape on which a loud tone was recorded and silence over its first part: the
 * power in a narrow band at the tone's frequency, with and without erasing. The noise that lies in
 * that band is told by the bands beside it and taken out.
 */
public final class ErasureMeasure {

    private static final Sentences SAID = Sentences.near(ErasureMeasure.class);

    /** How far the tone may lie from 1 kHz: off speed by that much. */
    private static final double LOWEST_HZ = 900;

    private static final double HIGHEST_HZ = 1100;

    /** Tones are sought in the octave about it, lest one beside the range be taken for its edge. */
    private static final ToneRange TONE =
            new ToneRange(0.1, 700, 1400, 0.01, 1, 0.5, 0.02, 3, -70, 0);

    /** Width of the band to either side; wow and flutter must stay within. */
    private static final double PASS_HZ = 12;

    private static final double STOP_HZ = 24;

    /** Where the noise beside is read: clear of the tone and of multiples of 50 and 60 Hz. */
    private static final double[] BESIDE_HZ = {-75, 75};

    /** Around the places where silence begins and the tone comes up. */
    private static final double CLEAR_S = 1.5;

    private static final double SHORTEST_S = 3;

    /** What is left counts as heard if it is this many standard deviations of the noise. */
    private static final double HEARD = 3;

    /** A channel with less than this of the louder one's tone holds its crosstalk: −30 dB. */
    private static final double SOUNDING = 0.001;

    private ErasureMeasure() {}

    /**
     * Each channel.
     *
     * @throws UnusableInputException if there is no tone, or nothing long enough before or behind
     *     it
     */
    public static List<Erasure> read(AudioSource replay) {
        double end = (double) replay.frames() / replay.sampleRateHz();
        double hz =
                ToneSearch.in(replay, TONE, 0, end).tones().stream()
                        .max(Comparator.comparingDouble(t -> level(replay, t)))
                        .orElseThrow(() -> refused("no-tone", replay.name()))
                        .frequencyHz();
        if (hz < LOWEST_HZ || hz > HIGHEST_HZ) {
            throw refused("off-speed", replay.name(), hz);
        }
        LoudStretch tone = LoudStretch.of(pointers(replay, hz, 0, end));
        double before = tone.fromSeconds() - 2 * CLEAR_S;
        double after = end - tone.toSeconds() - 2 * CLEAR_S;
        if (Math.max(before, after) < SHORTEST_S) {
            throw refused("too-little", replay.name(), tone.fromSeconds(), tone.toSeconds());
        }
        // what follows the tone may be tape that was never recorded, so what precedes it counts
        // first
        boolean first = before >= SHORTEST_S;
        double from = first ? CLEAR_S : tone.toSeconds() + CLEAR_S;
        double to = from + (first ? before : after);
        return channels(replay, hz, tone, from, to);
    }

    private static UnusableInputException refused(String key, Object... arguments) {
        return new UnusableInputException(SAID.say(key, arguments));
    }

    private static double level(AudioSource replay, FoundTone tone) {
        double[] power = powers(replay, tone.frequencyHz(), tone.fromSeconds(), tone.toSeconds());
        return DoubleStream.of(power).max().orElse(0);
    }

    private static Downconverter converter(AudioSource replay) {
        return Downconverter.of(PASS_HZ, STOP_HZ, replay.sampleRateHz());
    }

    private static List<Baseband> pointers(AudioSource replay, double hz, double from, double to) {
        return converter(replay).convert(replay, from, to, PhaseLaw.steady(hz));
    }

    /** Power in a band on each channel: A²/4 of a sine of peak A. */
    private static double[] powers(AudioSource replay, double hz, double from, double to) {
        return pointers(replay, hz, from, to).stream().mapToDouble(Baseband::meanPower).toArray();
    }

    private static List<Erasure> channels(
            AudioSource replay, double hz, LoudStretch tone, double from, double to) {
        double clearFrom = tone.fromSeconds() + CLEAR_S / 3;
        double clearTo = Math.max(clearFrom + 1, tone.toSeconds() - CLEAR_S / 3);
        double[] loud = powers(replay, hz, clearFrom, clearTo);
        double loudest = DoubleStream.of(loud).max().orElse(0);
        double[] left = powers(replay, hz, from, to);
        double[] noise = new double[left.length];
        for (double beside : BESIDE_HZ) {
            double[] power = powers(replay, hz + beside, from, to);
            for (int c = 0; c < noise.length; c++) {
                noise[c] += power[c] / BESIDE_HZ.length;
            }
        }
        double values = converter(replay).noiseBandwidthHz() * (to - from);
        List<Erasure> channels = new ArrayList<>();
        for (int c = 0; c < Math.min(2, loud.length); c++) {
            String name = ProgrammeReturn.channelName(c);
            channels.add(
                    loud[c] < SOUNDING * loudest
                            ? new Erasure(
                                    name,
                                    hz,
                                    null,
                                    Quantity.unknown(SAID.say("not-on-channel")),
                                    null)
                            : channel(name, hz, loud[c], left[c], noise[c], values));
        }
        return channels;
    }

    /**
     * One channel.
     *
     * @param loud power of the tone
     * @param left power that is left in its band, noise included
     * @param noise power of the noise in it
     * @param values how many independent values the latter two are means of
     */
    private static Erasure channel(
            String name, double hz, double loud, double left, double noise, double values) {
        // the scatter of a mean of squares, here of the band itself and of the two beside it
        double variance = noise * noise * (1 + 1.0 / BESIDE_HZ.length) / values;
        double sigma = Math.sqrt(variance);
        double rest = left - noise;
        double toneDbfs = Decibels.ofPower(4 * loud);
        if (rest > HEARD * sigma) {
            // a steady rest of power S also beats with noise of power N, which makes 2·S·N
            double scatter = Math.sqrt(variance + 2 * rest * noise / values);
            double uncertainty = 2 * 10 / Math.log(10) * scatter / rest;
            return new Erasure(
                    name,
                    hz,
                    toneDbfs,
                    Quantity.known(Decibels.ofPower(loud / rest), "dB", uncertainty),
                    null);
        }
        double most = Math.max(0, rest) + 2 * sigma;
        return most > 0
                ? new Erasure(
                        name,
                        hz,
                        toneDbfs,
                        Quantity.unknown(SAID.say("under-noise")),
                        Decibels.ofPower(loud / most))
                : new Erasure(
                        name, hz, toneDbfs, Quantity.unknown(SAID.say("digital-silence")), null);
    }
}
