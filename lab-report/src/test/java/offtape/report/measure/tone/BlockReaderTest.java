package offtape.report.measure.tone;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Blocks of 2048 samples at 8 kHz, in which tones lie on whole bins of 3.90625 Hz: Hann's window
 * then shows each in three bins and nowhere else.
 */
class BlockReaderTest {

    private static final int RATE = 8000;
    private static final int SIZE = 2048;
    private static final double BIN = (double) RATE / SIZE;

    private static ToneRange range(double wander, double octaves, double standingBelowHz) {
        return new ToneRange(
                0.35, 100, 3000, wander, octaves, 0.7, 0.025, 1, -100, standingBelowHz);
    }

    private static final ToneRange RANGE = range(0, 1, 0);

    private static double[] samples(int count, DoubleUnaryOperator x) {
        return IntStream.range(0, count)
                .mapToDouble(i -> x.applyAsDouble((double) i / RATE))
                .toArray();
    }

    /** Peaks and bins in turn. */
    private static double[] tones(double... peaksAndBins) {
        return samples(
                SIZE,
                t -> {
                    double x = 0;
                    for (int i = 0; i < peaksAndBins.length; i += 2) {
                        x +=
                                peaksAndBins[i]
                                        * Math.sin(2 * Math.PI * peaksAndBins[i + 1] * BIN * t);
                    }
                    return x;
                });
    }

    private static ToneBlock block(ToneRange range, double[]... channels) {
        return new BlockReader(new MemoryAudio("x", RATE, channels), range).at(0);
    }

    @Test
    void aToneAloneHasAllThePower() {
        ToneBlock block = block(RANGE, tones(0.4, 256));
        assertEquals(1000, block.hz(), 1e-6);
        assertEquals(1, block.share(), 1e-9);
        assertEquals(0.4 * 0.4 / 2, block.power(), 1e-9);
        assertEquals(0, block.secondShare(), 1e-9);
    }

    /** 0.16 beside 0.04: four fifths and one fifth. */
    @Test
    void twoTonesShareThePower() {
        ToneBlock block = block(RANGE, tones(0.4, 256, 0.2, 350));
        assertEquals(1000, block.hz(), 1e-6);
        assertEquals(0.8, block.share(), 1e-9);
        assertEquals(350 * BIN, block.secondHz(), 1e-6);
        assertEquals(0.2, block.secondShare(), 1e-9);
        assertEquals((0.16 + 0.04) / 2, block.power(), 1e-9);
    }

    @Test
    void channelsAreHeardTogether() {
        ToneBlock block = block(RANGE, tones(0.1, 256, 0.2, 350), tones(0.3, 256));
        assertEquals(1000, block.hz(), 1e-6);
        assertEquals((0.01 + 0.09) / (0.01 + 0.09 + 0.04), block.share(), 1e-9);
        assertEquals((0.01 + 0.09 + 0.04) / 2, block.power(), 1e-9);
    }

    @Test
    void silenceIsEmpty() {
        assertEquals(ToneBlock.EMPTY, block(RANGE, new double[SIZE]));
    }

    /** A block begins with its frame, and nothing lies beyond the sound. */
    @Test
    void aBlockBeginsWithItsFrame() {
        double[] x = new double[3 * SIZE];
        System.arraycopy(tones(0.4, 256), 0, x, SIZE, SIZE);
        BlockReader reader = new BlockReader(new MemoryAudio("x", RATE, x), RANGE);
        assertEquals(0.08, reader.at(SIZE).power(), 1e-9);
        assertEquals(ToneBlock.EMPTY, reader.at(0));
        assertEquals(ToneBlock.EMPTY, reader.at(2 * SIZE));
    }

    /**
     * Within an octave a tone must rule: bins 128 to 512 of 256. Hann's window shows a neighbour on
     * 127 and 513 with a quarter of its power within.
     */
    @ParameterizedTest
    @CsvSource({"128, 1.25", "130, 1.5", "126, 0", "127, 0.25", "512, 1.25", "510, 1.5", "514, 0"})
    void aToneRulesWithinAnOctave(int bin, double seen) {
        ToneBlock block = block(RANGE, tones(0.4, 256, 0.1, bin));
        double other = 0.01 * seen / 1.5;
        assertEquals(0.16 / (0.16 + other), block.share(), 1e-9);
    }

    /** Without a limit the whole band counts. */
    @ParameterizedTest
    @ValueSource(ints = {20, 900, 1000})
    void aToneMayHaveToRuleAll(int bin) {
        ToneBlock block = block(range(0, Double.POSITIVE_INFINITY, 0), tones(0.4, 256, 0.2, bin));
        assertEquals(0.8, block.share(), 1e-9);
    }

    /** 100 Hz is bin 25.6 and 3000 Hz bin 768. */
    @ParameterizedTest
    @CsvSource({"26, true", "24, false", "768, true", "770, false"})
    void tonesAreLookedForInARange(int bin, boolean found) {
        ToneBlock block = block(RANGE, tones(0.4, bin, 0.1, 300));
        assertEquals(found ? bin * BIN : 300 * BIN, block.hz(), 1e-6);
    }

    /** Three bins to either side belong to a line, or the share that flutter spreads it by. */
    @ParameterizedTest
    @CsvSource({
        "0, 2, 1",
        "0, 5, 0.8",
        "0.025, 5, 1",
        "0.025, -5, 1",
        "0.025, 11, 0.8",
        "0.03, 7, 1",
        "0.03, 10, 0.8"
    })
    void flutterBelongsToItsTone(double wander, int beside, double share) {
        ToneBlock block = block(range(wander, 1, 0), tones(0.4, 256, 0.2, 256 + beside));
        assertEquals(share, block.share(), 1e-9);
    }

    /**
     * Flutter has a line to either side; a line that has no such counterpart, by ten times its
     * power, is a second tone.
     */
    @ParameterizedTest
    @CsvSource({
        "0.1, 0, 280",
        "0, 0.1, 232",
        "0.1, 0.0320, 0",
        "0.1, 0.0312, 280",
        "0.0320, 0.1, 0",
        "0.0312, 0.1, 232"
    })
    void flutterIsNoSecondTone(double above, double below, double secondBin) {
        ToneBlock block = block(RANGE, tones(0.4, 256, above, 280, below, 232, 0.01, 310));
        assertEquals(
                (secondBin == 0 ? 310 : secondBin) * BIN,
                block.secondHz(),
                1e-3,
                "the loudest that is no flutter");
    }

    /** Twice the three bins of a line lie between two tones; the flank of a line is none. */
    @ParameterizedTest
    @CsvSource({"262, 310", "263, 263", "250, 310", "249, 249"})
    void aSecondToneLiesApart(int bin, int second) {
        ToneBlock block = block(RANGE, tones(0.4, 256, 0.1, bin, 0.01, 310));
        assertEquals(second * BIN, block.secondHz(), 1e-3);
    }

    /** A tone above half the band has no counterpart at all on its other side. */
    @Test
    void aSecondToneNeedsNoMirror() {
        assertEquals(60 * BIN, block(RANGE, tones(0.4, 700, 0.1, 60)).secondHz(), 1e-3);
        assertEquals(700 * BIN, block(RANGE, tones(0.4, 256, 0.1, 700)).secondHz(), 1e-3);
    }

    /** Where no octave is asked for, a line still has all that belongs to it around it. */
    @ParameterizedTest
    @ValueSource(ints = {259, 253, 262, 250})
    void aLineIsAroundItself(int bin) {
        assertEquals(1, block(range(0, 0, 0), tones(0.4, 256, 0.2, bin)).share(), 1e-9);
    }

    /** A range up to half the rate: the last three bins cannot be the middle of a line. */
    @Test
    void tonesAreFoundUpToHalfTheRate() {
        ToneRange all = new ToneRange(0.35, 1, 4000, 0, 1, 0.7, 0.025, 1, -100, 0);
        assertEquals(1019 * BIN, block(all, tones(0.4, 1019)).hz(), 1e-3);
        assertEquals(5 * BIN, block(all, tones(0.4, 5)).hz(), 1e-3);
        ToneBlock pair = block(all, tones(0.4, 600, 0.2, 175));
        assertEquals(175 * BIN, pair.secondHz(), 1e-3, "its mirror would lie just beyond the rate");
    }

    /** A parabola through the logarithms of Hann's lobe misses the place by 0.016 bins at most. */
    @ParameterizedTest
    @ValueSource(doubles = {-0.4, -0.2, 0.1, 0.3, 0.5})
    void frequenciesBetweenBinsAreRead(double beside) {
        assertEquals((256 + beside) * BIN, block(RANGE, tones(0.4, 256 + beside)).hz(), 0.02 * BIN);
    }

    /** A hum of 50.8 Hz throughout and a tone of 152 Hz in a part of the time. */
    private static double[] humAndTone(double toneFrom, double toneTo, double seconds) {
        return samples(
                (int) (seconds * RATE),
                t ->
                        0.1 * Math.sin(2 * Math.PI * 13 * BIN * t)
                                + (t >= toneFrom && t < toneTo
                                        ? 0.05 * Math.sin(2 * Math.PI * 39 * BIN * t)
                                        : 0));
    }

    private static final ToneRange LOW =
            new ToneRange(0.35, 27, 3000, 0, 1, 0.7, 0.025, 1, -100, 200);

    private static BlockReader listened(double[] x, double from, double to) {
        BlockReader reader = new BlockReader(new MemoryAudio("x", RATE, x), LOW);
        reader.listen(from, to);
        return reader;
    }

    /** The frequency of a block's tone; 0 if it has none, but for what rounding leaves. */
    private static double heardHz(ToneBlock block) {
        return block.isTone(LOW) ? block.hz() : 0;
    }

    /** What never ends is no tone, what sounds for less than three quarters of the time is. */
    @ParameterizedTest
    @CsvSource({"7, true", "8, false"})
    void aSoundThatNeverEndsIsNoTone(double seconds, boolean tone) {
        double[] x = humAndTone(0, seconds, 10);
        BlockReader reader = listened(x, 0, 10);
        assertEquals(0, heardHz(reader.at(9 * RATE)), "hum alone");
        assertEquals(tone ? 39 * BIN : 0, heardHz(reader.at(RATE)), 0.1);
        BlockReader deaf = new BlockReader(new MemoryAudio("x", RATE, x), LOW);
        assertEquals(13 * BIN, heardHz(deaf.at(RATE)), 0.1, "the hum is louder");
    }

    /** A hum may swell to twice its usual power; beyond that the rest is a tone. */
    @ParameterizedTest
    @CsvSource({"1.4, false", "1.5, true"})
    void aHumMaySwell(double factor, boolean tone) {
        double[] x =
                samples(4 * RATE, t -> (t < 3 ? 1 : factor) * Math.sin(2 * Math.PI * 13 * BIN * t));
        ToneBlock block = listened(x, 0, 4).at(3 * RATE + RATE / 4);
        assertEquals(tone ? 13 * BIN : 0, heardHz(block), 0.5);
        // 1.5² of the power less 2 of it, in the middle bin of three
        assertTrue(!tone || block.power() < 0.25 / 2);
    }

    /** Up to 200 Hz, bin 51.2: what sounds all the time above is a tone. */
    @ParameterizedTest
    @CsvSource({"49, false", "54, true"})
    void onlyLowSoundsStand(int bin, boolean tone) {
        double[] x = samples(3 * RATE, t -> Math.sin(2 * Math.PI * bin * BIN * t));
        assertEquals(tone ? bin * BIN : 0, heardHz(listened(x, 0, 3).at(RATE)), 0.1);
    }

    /** Only a stretch is listened to: where the tone does not sound all the time. */
    @Test
    void whatStandsIsLearnedWithinAStretch() {
        double[] x = humAndTone(4, 10, 10);
        assertEquals(39 * BIN, heardHz(listened(x, 0, 6).at(5 * RATE)), 0.1);
        assertEquals(0, heardHz(listened(x, 5, 10).at(5 * RATE)));
    }

    /** A sound that writes down where it is read. */
    private record Noted(List<Long> reads) implements AudioSource {

        @Override
        public int sampleRateHz() {
            return RATE;
        }

        @Override
        public int channels() {
            return 1;
        }

        @Override
        public long frames() {
            return 1000L * RATE;
        }

        @Override
        public double[][] read(long startFrame, int count) {
            reads.add(startFrame);
            double[] x = new double[count];
            Arrays.fill(x, 0.1);
            return new double[][] {x};
        }

        @Override
        public String name() {
            return "noted";
        }

        @Override
        public void close() {
            // nothing is held open
        }
    }

    /**
     * Four blocks a second, but 20 at least and 200 at most, about the middles of as many parts: of
     * ten seconds from 30 s the first about 30.125 s.
     */
    @ParameterizedTest
    @CsvSource({"2, 20", "5, 20", "10, 40", "50, 200", "500, 200"})
    void theWholeStretchIsListenedTo(double seconds, int blocks) {
        List<Long> reads = new ArrayList<>();
        new BlockReader(new Noted(reads), LOW).listen(30, 30 + seconds);
        assertEquals(blocks, reads.size());
        double half = seconds / blocks / 2;
        assertEquals((30 + half) * RATE - SIZE / 2.0, reads.get(0), 1);
        assertEquals((30 + seconds - half) * RATE - SIZE / 2.0, reads.get(blocks - 1), 1);
    }

    @Test
    void nothingIsListenedToIfNothingMayStand() {
        List<Long> reads = new ArrayList<>();
        new BlockReader(new Noted(reads), LOW.withStanding()).listen(30, 40);
        assertEquals(List.of(), reads);
    }
}
