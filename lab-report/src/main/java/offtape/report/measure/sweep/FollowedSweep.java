package offtape.report.measure.sweep;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.PowerDensity;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.loopback.InterfaceResponse;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.tone.Complex;

/**
 * The return of a sweep in bands of a forty-eighth of an octave: power of each channel, power of
 * the programme's own sweep, cross-spectrum of the channels. Powers are squared moduli at baseband:
 * a sine of peak A has A²/4.
 */
public final class FollowedSweep {

    private final Cue.Sweep cue;
    private final int firstBand;
    private final double[][] returned;
    private final double[] noiseWidthHz;
    private final int[] returnedCount;
    private final double[][] returnedRe;
    private final double[][] returnedIm;
    private final double[] programme;
    private final double[] programmeRe;
    private final double[] programmeIm;
    private final int[] programmeCount;
    private final double[] crossRe;
    private final double[] crossIm;
    private final double bandSeconds;
    private final double[][] noiseGain;

    /**
     * An empty result.
     *
     * @param bandSeconds how long a band lasts
     */
    FollowedSweep(Cue.Sweep cue, int firstBand, int bands, int channels, double bandSeconds) {
        this.cue = cue;
        this.firstBand = firstBand;
        this.bandSeconds = bandSeconds;
        this.returned = new double[channels][bands];
        this.noiseWidthHz = new double[bands];
        this.returnedCount = new int[bands];
        this.returnedRe = new double[channels][bands];
        this.returnedIm = new double[channels][bands];
        this.programme = new double[bands];
        this.programmeRe = new double[bands];
        this.programmeIm = new double[bands];
        this.programmeCount = new int[bands];
        this.crossRe = new double[bands];
        this.crossIm = new double[bands];
        this.noiseGain = new double[channels][bands];
        for (double[] gain : noiseGain) {
            Arrays.fill(gain, 1);
        }
    }

    /**
     * The sweep as it would be had it not passed an interface. A band that the interface hardly
     * lets through on a channel counts as not heard; a channel whose response is not known stays.
     */
    public FollowedSweep without(KnownInterface known, ProgrammeReturn ret) {
        double speed = ret.speedRatio(cue.startFrame(), cue.frames());
        List<Optional<InterfaceResponse>> own = new ArrayList<>();
        for (int c = 0; c < returned.length; c++) {
            own.add(known.response(ProgrammeReturn.channelName(c)));
        }
        FollowedSweep result =
                new FollowedSweep(cue, firstBand, size(), returned.length, bandSeconds);
        System.arraycopy(programme, 0, result.programme, 0, size());
        System.arraycopy(programmeRe, 0, result.programmeRe, 0, size());
        System.arraycopy(programmeIm, 0, result.programmeIm, 0, size());
        System.arraycopy(programmeCount, 0, result.programmeCount, 0, size());
        for (int i = 0; i < size(); i++) {
            double hz = frequencyHz(i) * speed;
            if (own.stream().allMatch(k -> k.map(h -> h.passes(hz)).orElse(true))) {
                result.divide(
                        this,
                        i,
                        own.stream()
                                .map(k -> k.map(h -> h.at(hz)).orElse(new Complex(1, 0)))
                                .toList());
            }
        }
        return result;
    }

    private void divide(FollowedSweep heard, int i, List<Complex> by) {
        returnedCount[i] = heard.returnedCount[i];
        noiseWidthHz[i] = heard.noiseWidthHz[i];
        for (int c = 0; c < returned.length; c++) {
            double gain = 1 / (by.get(c).size() * by.get(c).size());
            noiseGain[c][i] = gain * heard.noiseGain[c][i];
            returned[c][i] = gain * heard.returned[c][i];
            Complex mean =
                    new Complex(heard.returnedRe[c][i], heard.returnedIm[c][i]).over(by.get(c));
            returnedRe[c][i] = mean.re();
            returnedIm[c][i] = mean.im();
        }
        if (returned.length > 1) {
            Complex cross =
                    new Complex(heard.crossRe[i], heard.crossIm[i])
                            .over(by.get(0).times(by.get(1).conjugate()));
            crossRe[i] = cross.re();
            crossIm[i] = cross.im();
        }
    }

    void addReturn(int band, List<Baseband> bases, int k, double widthHz) {
        int i = band - firstBand;
        if (i < 0 || i >= noiseWidthHz.length) {
            return;
        }
        returnedCount[i]++;
        noiseWidthHz[i] += widthHz;
        for (int c = 0; c < returned.length; c++) {
            returned[c][i] += bases.get(c).power(k);
            returnedRe[c][i] += bases.get(c).re()[k];
            returnedIm[c][i] += bases.get(c).im()[k];
        }
        if (returned.length > 1) {
            Baseband l = bases.get(0);
            Baseband r = bases.get(1);
            crossRe[i] += l.re()[k] * r.re()[k] + l.im()[k] * r.im()[k];
            crossIm[i] += l.im()[k] * r.re()[k] - l.re()[k] * r.im()[k];
        }
    }

    void addProgramme(int band, Baseband base, int k) {
        int i = band - firstBand;
        if (i >= 0 && i < programme.length) {
            programme[i] += base.power(k);
            programmeRe[i] += base.re()[k];
            programmeIm[i] += base.im()[k];
            programmeCount[i]++;
        }
    }

    /**
     * How upright a channel returns around some frequencies: the cosine of its phase against the
     * programme, weighted by amplitude, from −1 (inverted) to 1; 0 if nothing is heard there.
     */
    public double uprightness(int channel, double fromHz, double toHz) {
        double along = 0;
        double size = 0;
        for (int i = Math.max(0, index(fromHz)); i < Math.min(size(), index(toHz)); i++) {
            double re = returnedRe[channel][i];
            double im = returnedIm[channel][i];
            along += re * programmeRe[i] + im * programmeIm[i];
            size += Math.hypot(re, im) * Math.hypot(programmeRe[i], programmeIm[i]);
        }
        return size == 0 ? 0 : along / size;
    }

    /** Phase of a channel against the programme in a band, radians; NaN if nothing is heard. */
    public double phase(int channel, int i) {
        double re = returnedRe[channel][i];
        double im = returnedIm[channel][i];
        double along = re * programmeRe[i] + im * programmeIm[i];
        double across = im * programmeRe[i] - re * programmeIm[i];
        return along == 0 && across == 0 ? Double.NaN : Math.atan2(across, along);
    }

    /** The cue that was followed. */
    public Cue.Sweep cue() {
        return cue;
    }

    /** Number of bands, of rising frequency. */
    public int size() {
        return programme.length;
    }

    /** Middle of a band in the programme, hertz. */
    public double frequencyHz(int i) {
        return SweepFollower.bandHz(firstBand + i);
    }

    /** Number of the band around a frequency, which may lie outside 0 … size − 1. */
    public int index(double hz) {
        return SweepFollower.band(hz) - firstBand;
    }

    /** Power of a channel in a band, or 0 if no sample fell into it. */
    public double power(int channel, int i) {
        return returnedCount[i] == 0 ? 0 : returned[channel][i] / returnedCount[i];
    }

    /** Power of a channel in a band as it would be without what leaks into it from the other. */
    double powerWithout(Leakage leakage, int channel, int i) {
        if (returned.length < 2) {
            return power(channel, i);
        }
        Complex cross = new Complex(crossRe(i), crossIm(i));
        double own = power(channel, i);
        return leakage.unmixedPower(channel, own, power(1 - channel, i), cross, frequencyHz(i));
    }

    /** Power of the programme's own sweep in a band, or 0 if no sample fell into it. */
    double programmePower(int i) {
        return programmeCount[i] == 0 ? 0 : programme[i] / programmeCount[i];
    }

    /**
     * Power that noise of a given density adds to {@link #power} of a channel; 0 without a density.
     */
    public double noisePower(int channel, int i, PowerDensity density, double speedRatio) {
        if (density == null || returnedCount[i] == 0) {
            return 0;
        }
        double hz = frequencyHz(i) * speedRatio;
        double width = noiseWidthHz[i] / returnedCount[i];
        return noiseGain[channel][i] * density.mean(hz - width / 2, hz + width / 2) * width / 2;
    }

    /** Real part of left times conjugate right in a band. */
    public double crossRe(int i) {
        return returnedCount[i] == 0 ? 0 : crossRe[i] / returnedCount[i];
    }

    /** Imaginary part of left times conjugate right in a band: positive if right is late. */
    public double crossIm(int i) {
        return returnedCount[i] == 0 ? 0 : crossIm[i] / returnedCount[i];
    }

    /** Cycles at a frequency in the time in which the sweep grows by the factor e. */
    double growthCycles(double hz) {
        return hz * bandSeconds * SweepFollower.BANDS / Math.log(2);
    }

    /** Number of independent values behind a band, at least 1. */
    public double independent(int i) {
        return Math.max(1, values(i));
    }

    /** As {@link #independent}, but less than 1 where neighbouring bands share a value. */
    public double values(int i) {
        double share = returnedCount[i] == 0 ? 0 : noiseWidthHz[i] / returnedCount[i];
        return share * bandSeconds;
    }
}
