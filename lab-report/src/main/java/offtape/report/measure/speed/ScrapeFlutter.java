package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.dsp.Baseband;
import offtape.core.dsp.Differentiator;
import offtape.core.dsp.Downconverter;
import offtape.core.dsp.PhaseLaw;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.ScrapeReading;

/**
 * Changes of speed faster than those that meters of wow and flutter read, as the tape's own
 * vibration makes them.
 *
 * <p>Changes of speed δ at a rate f move the phase of a tone of frequency f₀ by φ = δ·f₀/f and not
 * its level; noise beside the tone shakes both alike. So what the slope of the phase has in the
 * band beyond what noise gives is speed. The noise is read from the silence around the tone's
 * frequency. Where the tone's level is calmer than that, or there is no silence, the level tells
 * it: its fluctuation holds the noise and perhaps modulation noise, so that the figure is rather
 * too low than too high. Each channel is read by itself, since the same change of speed may reach
 * two channels at different moments.
 */
final class ScrapeFlutter {

    private static final Sentences SAID = Sentences.near(ScrapeFlutter.class);

    /** Length of the pieces that are read, and of the shortest tone. */
    private static final double PIECE_S = 2;

    private static final int MOST_PIECES = 6;
    private static final int FEWEST_BLOCKS = 8;

    /** A block in which the tone falls below this share of its level is left out. */
    private static final double GONE = 0.7;

    /** Share of the noise's power that may be wrong beside its scatter, one deviation. */
    private static final double NOISE_DOUBT = 0.01;

    /** Noise alone passes for a change of speed at so many deviations. */
    private static final double STANDS_OUT = 4;

    /** What filters and differentiator may be wrong by, a share of the reading, k = 2. */
    private static final double OWN_SHARE = 0.005;

    /**
     * What converters of 16 bits and their clocks add to a tone and not to silence, percent:
     * nothing smaller is told.
     */
    private static final double OWN_PERCENT = 0.001;

    private static final double SHORTEST_SILENCE_S = 0.5;

    /** So much of the silence is enough. */
    private static final double LONGEST_SILENCE_S = 6;

    private final ToneStream tone;
    private final ProgrammeReturn.Span silence;
    private final ScrapeBand band;
    private final Downconverter converter;

    private ScrapeFlutter(ToneStream tone, ProgrammeReturn.Span silence, ScrapeBand band) {
        this.tone = tone;
        this.silence = silence;
        this.band = band;
        this.converter = band.converter(tone.expectedHz(), tone.recording().sampleRateHz());
    }

    /**
     * What a tone tells.
     *
     * @param silence where nothing was recorded in the same recording, or null
     */
    static ScrapeReading of(ToneStream tone, ProgrammeReturn.Span silence) {
        ScrapeBand band = ScrapeBand.of(tone.expectedHz(), tone.recording().sampleRateHz());
        if (!band.isWide()) {
            return ScrapeReading.unknown(SAID.say("scrape-tone"));
        }
        if (tone.samples() < PIECE_S * tone.rateHz()) {
            return ScrapeReading.unknown(SAID.say("scrape-short"));
        }
        return new ScrapeFlutter(tone, silence, band).reading();
    }

    /**
     * What one channel tells, squared percent.
     *
     * @param excess what the phase has more than noise gives
     * @param deviation of that, standard
     * @param noise what noise gives
     * @param weight how much the channel counts
     * @param isFromLevel whether the noise was read from the level
     */
    private record Part(
            double excess, double deviation, double noise, double weight, boolean isFromLevel) {}

    private ScrapeReading reading() {
        AudioSource recording = tone.recording();
        List<FastBlocks> blocks = new ArrayList<>();
        for (int c = 0; c < recording.channels(); c++) {
            blocks.add(new FastBlocks(band, converter.rateHz()));
        }
        double[] levels = new double[recording.channels()];
        readTone(blocks, levels);
        List<FastBlocks> quiet = readSilence(levels);
        List<Part> parts = new ArrayList<>();
        for (int c = 0; c < blocks.size(); c++) {
            FastBlocks heard = blocks.get(c);
            heard.dropStruck();
            if (tone.weight(c) > 0 && heard.size() >= FEWEST_BLOCKS) {
                parts.add(part(heard, quiet.isEmpty() ? null : quiet.get(c), tone.weight(c)));
            }
        }
        return parts.isEmpty() ? ScrapeReading.unknown(SAID.say("scrape-faint")) : told(parts);
    }

    /** Reads some pieces spread evenly over all of the tone. */
    private void readTone(List<FastBlocks> blocks, double[] levels) {
        double seconds = tone.samples() / tone.rateHz();
        int pieces = Math.min(MOST_PIECES, (int) (seconds / PIECE_S));
        for (int i = 0; i < pieces; i++) {
            double room = pieces == 1 ? 0 : (seconds - PIECE_S) * i / (pieces - 1);
            List<Baseband> bases = convert(tone.firstSeconds() + room, PIECE_S);
            for (int c = 0; c < blocks.size(); c++) {
                levels[c] += add(blocks.get(c), bases.get(c)) / pieces;
            }
        }
    }

    private List<Baseband> convert(double from, double seconds) {
        return converter.convert(
                tone.recording(), from, from + seconds, PhaseLaw.steady(tone.expectedHz()));
    }

    /** Adds a piece of the tone; its usual level. */
    private double add(FastBlocks blocks, Baseband base) {
        double[] modulus = new double[base.size()];
        Arrays.setAll(modulus, k -> Math.sqrt(base.power(k)));
        double[] sorted = modulus.clone();
        Arrays.sort(sorted);
        double level = sorted[sorted.length / 2];
        if (!(level > 0)) {
            return 0;
        }
        double[] logarithm = new double[modulus.length];
        Arrays.setAll(logarithm, k -> Math.log(Math.max(modulus[k] / level, 1e-3)));
        double[] phase = slope(base.unwrappedPhase());
        double[] strength = slope(logarithm);
        int half = blocks.length() / 2;
        for (int from = 0; from + 2 * half <= phase.length; from += half) {
            int to = from + 2 * half + 2 * Differentiator.HALF;
            if (Arrays.stream(modulus, from, to).min().orElse(0) > GONE * level) {
                blocks.add(phase, strength, from);
            }
        }
        return level;
    }

    /** The slope of a phase as a deviation of the speed, percent. */
    private double[] slope(double[] radians) {
        double[] slope = Differentiator.apply(radians, converter.rateHz());
        double scale = 100 / (2 * Math.PI * tone.nominalHz());
        Arrays.setAll(slope, k -> scale * slope[k]);
        return slope;
    }

    /** The noise of each channel beside its tone; nothing where there is no silence. */
    private List<FastBlocks> readSilence(double[] levels) {
        List<FastBlocks> quiet = new ArrayList<>();
        if (silence == null || silence.seconds() < SHORTEST_SILENCE_S) {
            return quiet;
        }
        List<Baseband> bases =
                convert(silence.from(), Math.min(LONGEST_SILENCE_S, silence.seconds()));
        for (int c = 0; c < levels.length; c++) {
            FastBlocks blocks = new FastBlocks(band, converter.rateHz());
            double[] re = slope(scaled(bases.get(c).re(), levels[c]));
            double[] im = slope(scaled(bases.get(c).im(), levels[c]));
            int half = blocks.length() / 2;
            for (int from = 0; from + 2 * half <= re.length; from += half) {
                blocks.add(re, im, from);
            }
            quiet.add(blocks);
        }
        return quiet;
    }

    private static double[] scaled(double[] x, double level) {
        return Arrays.stream(x).map(v -> level > 0 ? v / level : 0).toArray();
    }

    private static Part part(FastBlocks heard, FastBlocks quiet, double weight) {
        FastBlocks.BandPower phase = heard.ofFirst();
        FastBlocks.BandPower noise = heard.ofSecond();
        boolean isFromLevel = true;
        if (quiet != null && quiet.size() > 0) {
            FastBlocks.BandPower still = quiet.ofBoth();
            double room = STANDS_OUT * Math.sqrt(still.variance() + noise.variance());
            isFromLevel = still.power() > noise.power() + room;
            noise = isFromLevel ? noise : still;
        }
        double doubt = NOISE_DOUBT * noise.power();
        return new Part(
                phase.power() - noise.power(),
                Math.sqrt(phase.variance() + noise.variance() + doubt * doubt),
                noise.power(),
                weight,
                isFromLevel);
    }

    /** The channels together; what shakes them may be common, so their doubts are added. */
    private ScrapeReading told(List<Part> parts) {
        double weights = parts.stream().mapToDouble(Part::weight).sum();
        double excess = parts.stream().mapToDouble(p -> p.weight() * p.excess()).sum() / weights;
        double deviation =
                parts.stream().mapToDouble(p -> p.weight() * p.deviation()).sum() / weights;
        double noise = parts.stream().mapToDouble(p -> p.weight() * p.noise()).sum() / weights;
        double[] ends = {band.lowHz(), band.highHz()};
        double least = Math.max(STANDS_OUT * deviation, OWN_PERCENT * OWN_PERCENT);
        if (!(excess > least)) {
            double most = Math.sqrt(Math.max(0, excess) + least);
            return new ScrapeReading(
                    Quantity.unknown(SAID.say("scrape-below", ceiling(most))),
                    Math.sqrt(noise),
                    ends);
        }
        double rms = Math.sqrt(excess);
        double doubt = 2 * deviation / (2 * rms);
        if (parts.stream().anyMatch(Part::isFromLevel)) {
            // The level may hold modulation noise only, and then all of the phase is speed.
            doubt = Math.max(doubt, Math.sqrt(excess + noise) - rms);
        }
        return new ScrapeReading(
                Quantity.known(rms, "%", Math.hypot(doubt, OWN_SHARE * rms)),
                Math.sqrt(noise),
                ends);
    }

    private static double ceiling(double percent) {
        return Math.ceil(1000 * percent) / 1000;
    }
}
