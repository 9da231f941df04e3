package offtape.report.measure.tape;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;

/** Reads the figures of one steady part. */
final class ToneReader {

    private static final Sentences SAID = Sentences.near(ToneReader.class);

    /** Kept clear of either end, since it is known within some cells. */
    private static final double MARGIN_S = 0.15;

    /** And how long the filter takes to rise, times its width. */
    private static final double RISE = 0.8;

    /** Cells without which nothing is told. */
    private static final int FEWEST = 4;

    /** How far a dropout spreads through the filter, times its width. */
    private static final double SPREAD = 0.4;

    /** A tone must stand so far over the noise in its band (6 dB) to be told. */
    private static final double HEARD = 4;

    /** What filters and rounding may add, dB, k = 2. */
    private static final double OWN_DB = 0.004;

    /** The same for the frequency, a share. */
    private static final double OWN_HZ = 2e-6;

    private final ToneCells cells;
    private final ToneNoise noise;
    private final int first;
    private final int end;
    private final int[] good;

    private ToneReader(AudioSource recording, ToneCells cells, int first, int end) {
        this.cells = cells;
        this.first = first;
        this.end = end;
        this.noise =
                ToneNoise.of(
                        recording, cells.seconds(first), cells.seconds(end), cells.carrierHz());
        this.good = goodCells();
    }

    /** The figures, or nothing if the tone is too short or drowns in noise. */
    static Optional<HeardTone> read(AudioSource recording, ToneCells cells, SteadyParts.Part part) {
        double pass = ToneCells.band(recording, cells.carrierHz()).passHz();
        int clear = (int) Math.ceil((MARGIN_S + RISE / pass) / cells.cellSeconds());
        if (part.cells() < 2 * clear + FEWEST) {
            return Optional.empty();
        }
        ToneReader reader =
                new ToneReader(recording, cells, part.first() + clear, part.end() - clear);
        boolean isHeard = IntStream.range(0, cells.channels()).anyMatch(reader::isHeard);
        return isHeard && reader.good.length >= FEWEST
                ? Optional.of(reader.tone(part))
                : Optional.empty();
    }

    private HeardTone tone(SteadyParts.Part part) {
        Scatter hz = Scatter.of(values(i -> cells.hz(i)));
        return new HeardTone(
                cells.seconds(part.first()),
                cells.seconds(part.end()),
                hz.mean(),
                Math.hypot(hz.expanded(), OWN_HZ * hz.mean()),
                IntStream.range(0, cells.channels()).mapToObj(this::level).toList(),
                difference(),
                phase(),
                (end - first - good.length) * cells.cellSeconds());
    }

    /** The cells without dropouts and clicks on any channel that holds the tone. */
    private int[] goodCells() {
        double pass = noise.passHz();
        int spread = 1 + (int) Math.ceil(SPREAD / pass / cells.cellSeconds());
        boolean[] bad = new boolean[end - first];
        for (int c = 0; c < cells.channels(); c++) {
            if (!isHeard(c)) {
                continue;
            }
            int channel = c;
            boolean[] jumps =
                    Dropouts.in(
                            IntStream.range(first, end)
                                    .mapToDouble(i -> Math.sqrt(cells.power(channel, i)))
                                    .toArray(),
                            spread);
            for (int i = 0; i < bad.length; i++) {
                bad[i] |= jumps[i];
            }
        }
        return IntStream.range(first, end).filter(i -> !bad[i - first]).toArray();
    }

    private double usual(int channel) {
        double[] power =
                IntStream.range(first, end).mapToDouble(i -> cells.power(channel, i)).toArray();
        return Ranked.median(power) + 1e-300;
    }

    private boolean isHeard(int channel) {
        return usual(channel) > HEARD * noise.power(channel) && usual(channel) > 1e-16;
    }

    private Quantity level(int channel) {
        if (!isHeard(channel)) {
            return Quantity.unknown(
                    SAID.say("not-on-channel", ProgrammeReturn.channelName(channel)));
        }
        Scatter power = Scatter.of(values(i -> cells.power(channel, i)));
        double tone = power.mean() - noise.power(channel);
        // The noise itself is known within a fifth of its power.
        double doubt = Math.hypot(power.expanded(), 0.2 * noise.power(channel));
        double peak = Decibels.ofPower(4 * tone);
        return Quantity.known(peak, "dBFS", Math.hypot(OWN_DB, decibels(doubt / tone)));
    }

    private Quantity difference() {
        if (cells.channels() < 2) {
            return Quantity.unknown(SAID.say("one-channel"));
        }
        for (int c = 0; c < 2; c++) {
            if (!isHeard(c)) {
                return level(c);
            }
        }
        Scatter ratio = Scatter.of(values(i -> Decibels.ofPower(tone(1, i) / tone(0, i))));
        double left = values(0) - noise.power(0);
        double right = values(1) - noise.power(1);
        double doubt = 0.2 * Math.hypot(noise.power(0) / left, noise.power(1) / right);
        return Quantity.known(
                Decibels.ofPower(right / left),
                "dB",
                Math.hypot(Math.hypot(OWN_DB, ratio.expanded()), decibels(doubt)));
    }

    /** Power in a cell without the noise's, never quite nothing. */
    private double tone(int channel, int cell) {
        return Math.max(
                cells.power(channel, cell) - noise.power(channel),
                0.01 * cells.power(channel, cell));
    }

    private double values(int channel) {
        return IntStream.of(good).mapToDouble(i -> cells.power(channel, i)).average().orElse(0);
    }

    private HeardTone.Phase phase() {
        if (cells.channels() < 2 || !isHeard(0) || !isHeard(1)) {
            return null;
        }
        double re = IntStream.of(good).mapToDouble(cells::crossRe).sum();
        double im = IntStream.of(good).mapToDouble(cells::crossIm).sum();
        double mean = Math.atan2(im, re);
        double[] about =
                values(i -> wrapped(Math.atan2(cells.crossIm(i), cells.crossRe(i)) - mean));
        Scatter phase = Scatter.of(about);
        double square =
                IntStream.range(0, about.length).mapToDouble(i -> about[i] * about[i]).sum()
                        / about.length;
        double own = 0;
        for (int c = 0; c < 2; c++) {
            own += noise.power(c, cells.cellSeconds()) / (2 * (values(c) - noise.power(c)));
        }
        double doubt = own * Math.hypot(2 * Math.sqrt(2.0 / about.length), 0.2);
        double swing = square * Math.sqrt(2.0 / about.length);
        return new HeardTone.Phase(
                wrapped(mean + phase.mean()),
                Math.hypot(phase.standard(), 1e-4),
                square - own,
                Math.hypot(doubt, swing));
    }

    private double[] values(IntToDoubleFunction figure) {
        return IntStream.of(good).mapToDouble(figure).toArray();
    }

    /** An angle between −π and π. */
    static double wrapped(double radians) {
        return Math.IEEEremainder(radians, 2 * Math.PI);
    }

    /** Decibels of a small share of a power. */
    private static double decibels(double share) {
        return 10 / Math.log(10) * share;
    }

    /** Reads all steady parts of a stretch. */
    static List<HeardTone> all(AudioSource recording, double from, double to, double toneHz) {
        ToneCells cells = ToneCells.of(recording, from, to, toneHz);
        List<HeardTone> tones = new ArrayList<>();
        for (SteadyParts.Part part : SteadyParts.of(cells)) {
            read(recording, cells, part).ifPresent(tones::add);
        }
        return tones;
    }
}
