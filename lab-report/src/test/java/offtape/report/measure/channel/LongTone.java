package offtape.report.measure.channel;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;

/** A steady tone on both channels that comes back as its formula says, sample by sample. */
final class LongTone {

    private static final double PEAK = 0.1;
    private static final double FADE_S = 0.01;

    private final int rateHz;
    private final double hz;
    private final double seconds;
    private final List<Damage> damages = new ArrayList<>();
    private double hissDb = -300;
    private double wowPercent;
    private double wowHz = 1;
    private double rippleDb;
    private double driftDb;
    private double skewUs;
    private double skewHz;
    private double delayUs;
    private double rightGain = 1;
    private double speed = 1;
    private int clicks;

    /**
     * A loss of level.
     *
     * @param edgeSeconds length of its edges, which are raised cosines in decibels; 0 for a step.
     *     {@code seconds} lie between the middles of the edges
     */
    record Damage(
            int channel, double atSeconds, double seconds, double depthDb, double edgeSeconds) {

        double lossDb(double t) {
            double out = Math.max(atSeconds - t, t - atSeconds - seconds);
            if (edgeSeconds == 0) {
                return out < 0 ? depthDb : 0;
            }
            double place = Math.max(-1, Math.min(1, 2 * out / edgeSeconds));
            return depthDb * (1 - Math.sin(Math.PI / 2 * place)) / 2;
        }
    }

    LongTone(int rateHz, double hz, double seconds) {
        this.rateHz = rateHz;
        this.hz = hz;
        this.seconds = seconds;
    }

    LongTone hiss(double levelDb) {
        hissDb = levelDb;
        return this;
    }

    LongTone wow(double peakPercent, double rateOfWowHz) {
        wowPercent = peakPercent;
        wowHz = rateOfWowHz;
        return this;
    }

    /** A slow wave of level of ± so many decibels at 0.5 Hz, and a drift over a minute. */
    LongTone level(double waveDb, double driftDbPerMinute) {
        rippleDb = waveDb;
        driftDb = driftDbPerMinute;
        return this;
    }

    /** How late the right channel is: a mean, and a sine about it. */
    LongTone skew(double meanUs, double peakUs, double rateOfSkewHz) {
        delayUs = meanUs;
        skewUs = peakUs;
        skewHz = rateOfSkewHz;
        return this;
    }

    LongTone rightGain(double gain) {
        rightGain = gain;
        return this;
    }

    /** Tape speed over nominal: the tone was sent lower and longer by it. */
    LongTone speed(double overNominal) {
        speed = overNominal;
        return this;
    }

    LongTone clicks(int count) {
        clicks = count;
        return this;
    }

    LongTone damage(Damage damage) {
        damages.add(damage);
        return this;
    }

    /** The return, in place. */
    ProgrammeReturn play(long seed) {
        int n = (int) (seconds * rateHz);
        double[][] x = new double[2][n];
        Random random = new Random(seed);
        double noise = PEAK / Math.sqrt(2) * Math.pow(10, hissDb / 20);
        for (int i = 0; i < n; i++) {
            double t = (double) i / rateHz;
            double fade = Math.min(1, Math.min(t, seconds - t) / FADE_S);
            double waveDb = rippleDb * Math.sin(Math.PI * t) + driftDb * t / 60;
            double turns =
                    hz * t
                            - hz
                                    * wowPercent
                                    / 100
                                    / (2 * Math.PI * wowHz)
                                    * Math.cos(2 * Math.PI * wowHz * t);
            double late = 1e-6 * (delayUs + skewUs * Math.sin(2 * Math.PI * skewHz * t));
            for (int c = 0; c < 2; c++) {
                double db = waveDb;
                for (Damage d : damages) {
                    db -= d.channel() == c ? d.lossDb(t) : 0;
                }
                double phase = 2 * Math.PI * (turns - (c == 1 ? hz * late : 0));
                double gain = PEAK * fade * Math.pow(10, db / 20) * (c == 1 ? rightGain : 1);
                x[c][i] = gain * Math.sin(phase) + noise * random.nextGaussian();
            }
        }
        for (int i = 0; i < clicks; i++) {
            x[random.nextInt(2)][random.nextInt(n)] += random.nextBoolean() ? 0.5 : -0.5;
        }
        return programme(new MemoryAudio("return", rateHz, x));
    }

    private ProgrammeReturn programme(MemoryAudio sound) {
        long frames = Math.round(speed * sound.frames());
        Cue.Tone tone = new Cue.Tone("tone", ChannelSet.BOTH, 0, frames, hz / speed, 0);
        CueSheet sheet = new CueSheet(rateHz, frames, -20, null, List.of(tone));
        Location there =
                new Location(
                        TimeMap.straight(0, 1 / speed, speed * seconds),
                        seconds + 1,
                        0,
                        0,
                        List.of(1, 1),
                        true,
                        true,
                        0,
                        seconds + 1,
                        List.of());
        return new ProgrammeReturn(new Programme(sheet, sound), sound, there);
    }
}
