package offtape.report.measure.tape;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.report.measure.tone.OrderBand;

/**
 * A stretch around a tone in cells of a twentieth of a second: its power on each channel, its
 * frequency, and how the channels stand to each other. Flutter moves the frequency and leaves the
 * power alone. Read piece by piece, so that an hour takes some megabytes.
 */
final class ToneCells {

    /** Length of a cell, or a little more. */
    private static final double CELL_S = 0.05;

    /** Samples a second that even the lowest tones get. */
    private static final double LEAST_RATE_HZ = 100;

    private static final int PIECE = 200;

    private final double firstSeconds;
    private final double cellSeconds;
    private final double carrierHz;
    private final double[][] power;
    private final double[] crossRe;
    private final double[] crossIm;
    private final double[] hz;

    private ToneCells(
            double firstSeconds, double cellSeconds, double carrierHz, int channels, int count) {
        this.firstSeconds = firstSeconds;
        this.cellSeconds = cellSeconds;
        this.carrierHz = carrierHz;
        this.power = new double[channels][count];
        this.crossRe = new double[count];
        this.crossIm = new double[count];
        this.hz = new double[count];
    }

    /** The band about a tone that is looked at. */
    static OrderBand band(AudioSource recording, double toneHz) {
        return OrderBand.forLevel(toneHz).below(toneHz, recording.sampleRateHz());
    }

    /** The converter for a tone in a recording. */
    static Downconverter converter(AudioSource recording, double toneHz) {
        int rate = recording.sampleRateHz();
        OrderBand band = band(recording, toneHz);
        return Downconverter.of(band.passHz(), band.stopHz(), rate, LEAST_RATE_HZ);
    }

    /**
     * Reads a stretch.
     *
     * @param toneHz frequency of the tone, within half a percent or so
     */
    static ToneCells of(AudioSource recording, double from, double to, double toneHz) {
        Downconverter converter = converter(recording, toneHz);
        int samples = (int) Math.max(1, Math.ceil(CELL_S * converter.rateHz() - 1e-9));
        double start = Math.max(0, from);
        int count = (int) Math.max(0, (converter.outputs(start, to) - 1) / samples);
        ToneCells cells =
                new ToneCells(
                        start, samples / converter.rateHz(), toneHz, recording.channels(), count);
        PhaseLaw law = PhaseLaw.steady(toneHz);
        for (int cell = 0; cell < count; cell += PIECE) {
            int some = Math.min(PIECE, count - cell);
            List<Baseband> bases =
                    converter.convert(
                            recording, start, (long) cell * samples, some * samples + 1, law);
            for (int i = 0; i < some; i++) {
                cells.fill(cell + i, bases, i * samples, samples);
            }
        }
        return cells;
    }

    private void fill(int cell, List<Baseband> bases, int from, int samples) {
        double turnRe = 0;
        double turnIm = 0;
        for (int c = 0; c < bases.size(); c++) {
            Baseband b = bases.get(c);
            for (int k = from; k < from + samples; k++) {
                power[c][cell] += b.power(k) / samples;
                turnRe += b.re()[k + 1] * b.re()[k] + b.im()[k + 1] * b.im()[k];
                turnIm += b.im()[k + 1] * b.re()[k] - b.re()[k + 1] * b.im()[k];
            }
        }
        double rate = bases.get(0).rateHz();
        hz[cell] = carrierHz + Math.atan2(turnIm, turnRe) * rate / (2 * Math.PI);
        if (bases.size() > 1) {
            Baseband l = bases.get(0);
            Baseband r = bases.get(1);
            for (int k = from; k < from + samples; k++) {
                crossRe[cell] += (r.re()[k] * l.re()[k] + r.im()[k] * l.im()[k]) / samples;
                crossIm[cell] += (r.im()[k] * l.re()[k] - r.re()[k] * l.im()[k]) / samples;
            }
        }
    }

    int count() {
        return hz.length;
    }

    int channels() {
        return power.length;
    }

    double cellSeconds() {
        return cellSeconds;
    }

    double carrierHz() {
        return carrierHz;
    }

    /** When a cell begins in the recording. */
    double seconds(int cell) {
        return firstSeconds + cell * cellSeconds;
    }

    /** Mean squared modulus, a quarter of the squared peak of the tone. */
    double power(int channel, int cell) {
        return power[channel][cell];
    }

    /** Power of all channels. */
    double power(int cell) {
        return Arrays.stream(power).mapToDouble(p -> p[cell]).sum();
    }

    /** Frequency in the cell. */
    double hz(int cell) {
        return hz[cell];
    }

    /** Real part of right times the conjugate of left. */
    double crossRe(int cell) {
        return crossRe[cell];
    }

    /** Imaginary part of the same. */
    double crossIm(int cell) {
        return crossIm[cell];
    }
}
