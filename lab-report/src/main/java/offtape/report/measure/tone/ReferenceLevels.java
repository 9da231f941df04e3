package offtape.report.measure.tone;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.locate.ProgrammeReturn;

/**
 * What the reference tone came back as on each channel: the zero of every level.
 *
 * @param cue the reference tone, or the one that was heard in its place
 * @param peaks peak of a sine at reference level as it returns, in full-scale units, one a channel;
 *     0 if the tone was not heard there
 * @param rightOverLeft the two as a complex ratio; zero unless both were heard
 * @param relativeUncertainty standard uncertainty of each peak as a share of it
 */
public record ReferenceLevels(
        Cue.Tone cue, double[] peaks, Complex rightOverLeft, double[] relativeUncertainty) {

    /** A tone less than this over the noise beside it is not heard, as a power ratio. */
    private static final double HEARD = 30;

    /** What is so much weaker than the other channel, −30 dB, is crosstalk of it: no tone. */
    private static final double CROSSTALK = 0.0316;

    /**
     * Measures the reference tone, or the next best if that one is not heard on any channel.
     *
     * @return nothing if the programme has no such tone between 200 Hz and 2 kHz in the recording
     */
    public static Optional<ReferenceLevels> measure(ProgrammeReturn ret) {
        List<Cue.Tone> tones = candidates(ret);
        return tones.stream()
                .map(t -> of(ret, t))
                .filter(ReferenceLevels::isHeard)
                .findFirst()
                .or(() -> tones.stream().findFirst().map(t -> none(ret, t)));
    }

    /** The tone that is the reference if it is heard. */
    public static Optional<Cue.Tone> wanted(ProgrammeReturn ret) {
        return candidates(ret).stream().findFirst();
    }

    /**
     * Tones on both channels, those nearest to reference level first, of these the ones nearest to
     * 1 kHz, and of these the longest.
     */
    private static List<Cue.Tone> candidates(ProgrammeReturn ret) {
        Stream<Cue.Tone> tones = ret.cues(Cue.Tone.class).stream();
        Stream<Cue.Tone> steps =
                ret.cues(Cue.Ladder.class).stream().flatMap(ReferenceLevels::steps);
        return Stream.concat(tones, steps)
                .filter(t -> t.channels() == ChannelSet.BOTH)
                .filter(t -> t.frequencyHz() >= 200 && t.frequencyHz() <= 2000)
                .sorted(
                        Comparator.comparingDouble((Cue.Tone t) -> Math.abs(t.levelDb()))
                                .thenComparingDouble(t -> fromOneKilohertz(t))
                                .thenComparingLong(t -> -t.frames()))
                .toList();
    }

    private static ReferenceLevels none(ProgrammeReturn ret, Cue.Tone cue) {
        double[] none = new double[ret.channels()];
        return new ReferenceLevels(cue, none, Complex.ZERO, none);
    }

    /** The steps of a ladder as tones. */
    public static Stream<Cue.Tone> steps(Cue.Ladder ladder) {
        return ladder.steps().stream()
                .map(
                        s ->
                                new Cue.Tone(
                                        ladder.id(),
                                        ladder.channels(),
                                        s.startFrame(),
                                        s.frames(),
                                        ladder.frequencyHz(),
                                        s.levelDb()));
    }

    private static double fromOneKilohertz(Cue.Tone t) {
        return Math.abs(Math.log(t.frequencyHz() / 1000));
    }

    private static ReferenceLevels of(ProgrammeReturn ret, Cue.Tone cue) {
        double[] peaks = new double[ret.channels()];
        double[] uncertainty = new double[ret.channels()];
        List<OrderSpectrum> orders = OrderSpectrum.of(ret, cue);
        for (int c = 0; c < Math.min(peaks.length, orders.size()); c++) {
            double power = orders.get(c).power(1);
            double noise = orders.get(c).noise(1);
            if (power > HEARD * noise) {
                peaks[c] = Math.sqrt(power - noise) * Math.pow(10, -cue.levelDb() / 20);
                uncertainty[c] = Math.sqrt(orders.get(c).unrest(1) / power / 2);
            }
        }
        for (int c = 0; c < 2 && peaks.length > 1; c++) {
            peaks[c] = peaks[c] < CROSSTALK * peaks[1 - c] ? 0 : peaks[c];
        }
        boolean both = peaks.length > 1 && peaks[0] > 0 && peaks[1] > 0;
        Complex ratio =
                both ? orders.get(1).fundamental().over(orders.get(0).fundamental()) : Complex.ZERO;
        return new ReferenceLevels(cue, peaks, ratio, uncertainty);
    }

    private boolean isHeard() {
        return DoubleStream.of(peaks).anyMatch(p -> p > 0);
    }

    /** Whether the tone was heard on a channel. */
    public boolean heard(int channel) {
        return peaks[channel] > 0;
    }

    /** The channel that alone does not return the tone, or −1. */
    public int deadChannel() {
        boolean one = peaks.length > 1 && heard(0) != heard(1);
        return one ? heard(0) ? 1 : 0 : -1;
    }

    /** Mean square of the reference tone on a channel, full-scale units. */
    public double power(int channel) {
        return peaks[channel] * peaks[channel] / 2;
    }
}
