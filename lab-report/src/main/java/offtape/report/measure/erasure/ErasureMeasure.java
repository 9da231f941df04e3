package offtape.report.measure.erasure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
    private static final ToneRange TONE =
            new ToneRange(0.1, LOWEST_HZ, HIGHEST_HZ, 0.01, 1, 0.5, 0.02, 3, -70, 0);

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
        List<Erasure> channels = new ArrayList<>();
        for (int c = 0; c < Math.min(2, replay.channels()); c++) {
            channels.add(channel(replay, hz, c, tone, from, to));
        }
        return channels;
    }

    private static UnusableInputException refused(String key, Object... arguments) {
        return new UnusableInputException(SAID.say(key, arguments));
    }

    private static double level(AudioSource replay, FoundTone tone) {
        return powers(replay, tone.frequencyHz(), tone.fromSeconds(), tone.toSeconds()).stream()
                .mapToDouble(Band::power)
                .max()
                .orElse(0);
    }

    /**
     * Power in a band.
     *
     * @param power mean square of the pointer: A²/4 of a sine of peak A
     * @param values how many independent values it is the mean of
     */
    private record Band(double power, double values) {}

    private static Downconverter converter(AudioSource replay) {
        return Downconverter.of(PASS_HZ, STOP_HZ, replay.sampleRateHz());
    }

    private static List<Baseband> pointers(AudioSource replay, double hz, double from, double to) {
        return converter(replay).convert(replay, from, to, PhaseLaw.steady(hz));
    }

    private static List<Band> powers(AudioSource replay, double hz, double from, double to) {
        double values = converter(replay).noiseBandwidthHz() * (to - from);
        return pointers(replay, hz, from, to).stream().map(b -> band(b, values)).toList();
    }

    private static Band band(Baseband base, double values) {
        return new Band(base.meanPower(), Math.max(1, values));
    }

    private static Erasure channel(
            AudioSource replay, double hz, int c, LoudStretch tone, double from, double to) {
        double clearFrom = tone.fromSeconds() + CLEAR_S / 3;
        double clearTo = Math.max(clearFrom + 1, tone.toSeconds() - CLEAR_S / 3);
        double loud = powers(replay, hz, clearFrom, clearTo).get(c).power();
        Band left = powers(replay, hz, from, to).get(c);
        double noise = 0;
        for (double beside : BESIDE_HZ) {
            noise += powers(replay, hz + beside, from, to).get(c).power() / BESIDE_HZ.length;
        }
        // the scatter of a mean of squares, here of the band itself and of the two beside it
        double sigma = noise * Math.sqrt((1 + 1.0 / BESIDE_HZ.length) / left.values());
        double rest = left.power() - noise;
        String name = ProgrammeReturn.channelName(c);
        double toneDbfs = Decibels.ofPower(4 * loud);
        if (rest > HEARD * sigma) {
            double uncertainty = 2 * 10 / Math.log(10) * sigma / rest;
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
