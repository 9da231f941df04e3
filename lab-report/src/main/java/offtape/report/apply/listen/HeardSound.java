package offtape.report.apply.listen;

import java.util.OptionalDouble;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.ItuBs1770;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;

/**
 * The part of one sound in memory, before its level is matched.
 *
 * @param name of its file
 * @param samples one array a channel, full-scale units
 * @param loudnessLufs integrated loudness of the part
 */
record HeardSound(String name, double[][] samples, double loudnessLufs) {

    private static final Sentences SAID = Sentences.near(HeardSound.class);

    /** So many samples in a row at the extreme value are a waveform that was cut off. */
    private static final int FLAT_RUN = 4;

    private static final double NEAR_FULL_SCALE = 0.98;

    /**
     * Reads it.
     *
     * @throws UnusableInputException if it is silent
     */
    static HeardSound of(AudioSource sound, Part part) {
        double[][] samples = sound.read(part.fromFrame(), part.frames());
        ItuBs1770 meter = ItuBs1770.inFront(sound.sampleRateHz(), sound.channels());
        meter.add(samples);
        OptionalDouble loudness = meter.integratedLufs();
        if (loudness.isEmpty()) {
            throw new UnusableInputException(SAID.say("part.silent", sound.name()));
        }
        return new HeardSound(sound.name(), samples, loudness.getAsDouble());
    }

    /** The largest magnitude. */
    double peak() {
        double peak = 0;
        for (double[] channel : samples) {
            for (double x : channel) {
                peak = Math.max(peak, Math.abs(x));
            }
        }
        return peak;
    }

    /** Places at which the waveform stands still near full scale: it was clipped. */
    int clippedPlaces() {
        int places = 0;
        for (double[] channel : samples) {
            int run = 1;
            for (int i = 1; i < channel.length; i++) {
                boolean isFlat =
                        channel[i] == channel[i - 1] && Math.abs(channel[i]) >= NEAR_FULL_SCALE;
                run = isFlat ? run + 1 : 1;
                places += run == FLAT_RUN ? 1 : 0;
            }
        }
        return places;
    }

    /** The same, louder or quieter by a gain in decibels. */
    HeardSound by(double gainDb) {
        if (gainDb == 0) {
            return this;
        }
        double gain = Decibels.toAmplitude(gainDb);
        double[][] scaled = new double[samples.length][];
        for (int c = 0; c < samples.length; c++) {
            scaled[c] = samples[c].clone();
            for (int i = 0; i < scaled[c].length; i++) {
                scaled[c][i] *= gain;
            }
        }
        return new HeardSound(name, scaled, loudnessLufs + gainDb);
    }

    /** How alike both are, as they lie: 1 if equal up to level, −1 if turned over, 0 if unlike. */
    double likeness(HeardSound other) {
        double own = 0;
        double others = 0;
        double both = 0;
        for (int c = 0; c < samples.length; c++) {
            for (int i = 0; i < samples[c].length; i++) {
                double x = samples[c][i];
                double y = other.samples[c][i];
                own += x * x;
                others += y * y;
                both += x * y;
            }
        }
        return both / Math.sqrt(own * others);
    }
}
