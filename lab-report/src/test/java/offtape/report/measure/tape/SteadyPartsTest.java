package offtape.report.measure.tape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import offtape.core.audio.MemoryAudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where a tone that is played in parts keeps its level. */
class SteadyPartsTest {

    /** A level that is another from each of some times on: "0:-10 3:-12", dB. */
    private static DoubleUnaryOperator steps(String words) {
        double[][] steps =
                Arrays.stream(words.split(" "))
                        .map(w -> Arrays.stream(w.split(":")).mapToDouble(Double::parseDouble))
                        .map(s -> s.toArray())
                        .toArray(double[][]::new);
        return t -> {
            double db = -200;
            for (double[] s : steps) {
                db = t >= s[0] ? s[1] : db;
            }
            return db;
        };
    }

    /**
     * 2000 samples a second are thinned to 111, six of which are a twentieth of a second or more.
     */
    private static final double CELL_S = 0.054;

    private static List<SteadyParts.Part> parts(MemoryAudio sound) {
        double seconds = (double) sound.frames() / sound.sampleRateHz();
        return SteadyParts.of(ToneCells.of(sound, 0, seconds, Sounding.HZ));
    }

    /**
     * A step of 1.5 dB or more parts, of less it does not; a dropout of up to 0.6 s between equal
     * levels joins; what lasts less than 1.2 s is no part. Each within two or three cells.
     */
    @ParameterizedTest
    @CsvSource({
        "0:0, 0-8",
        "0:-200 1:0 4:-200, 1-4",
        "0:0 3:-2, 0-3 3-8",
        "0:0 3:2, 0-3 3-8",
        "0:0 3:-1.2, 0-8",
        "0:0 3:-1.8, 0-3 3-8",
        "0:0 2:-2 4:-4 6:-6, 0-2 2-4 4-6 6-8",
        "0:0 3:-200 3.45:0, 0-8",
        "0:0 3:-200 3.9:0, 0-3 3.9-8",
        "0:0 3:-200 3.4:-1.2, 0-3 3.4-8",
        "0:0 3:-200 3.4:-0.7, 0-8",
        "0:0 3:-200 3.4:0 5:-200 5.4:0, 0-8",
        "0:-200 1:0 2:-200 4:0, 4-8",
        "0:-200 1:0 2.4:-200 4:0, 1-2.4 4-8",
        "0:-200, ''"
    })
    void levelsPartTheTone(String levels, String wanted) {
        List<SteadyParts.Part> parts = parts(new Sounding(8).level(steps(levels)).mono());
        String[] each = wanted.isEmpty() ? new String[0] : wanted.split(" ");
        assertEquals(each.length, parts.size(), parts.toString());
        for (int i = 0; i < each.length; i++) {
            String[] ends = each[i].split("-");
            assertEquals(Double.parseDouble(ends[0]), CELL_S * parts.get(i).first(), 0.13);
            assertEquals(Double.parseDouble(ends[1]), CELL_S * parts.get(i).end(), 0.15);
        }
    }

    /** The level of a part is its median: 0.01 of power on either channel, 10·lg 0.02 dB. */
    @Test
    void aPartsLevelIsThatOfBothChannels() {
        SteadyParts.Part part = parts(new Sounding(3).pair()).get(0);
        assertEquals(10 * Math.log10(0.02), part.levelDb(), 0.01);
        assertEquals(part.end() - part.first(), part.cells());
    }

    /** 2 % beside the tone that is looked for lies another one. */
    @ParameterizedTest
    @CsvSource({"406, 1", "394, 1", "410, 0", "390, 0"})
    void anotherToneIsNotIt(double hz, int count) {
        assertEquals(count, parts(new Sounding(4).at(hz).mono()).size());
    }

    /** Noise keeps neither level nor frequency; a tone that wavers too widely does not either. */
    @Test
    void whatIsUnsteadyIsNoTone() {
        Random random = new Random(1);
        double[] noise = new double[6 * Sounding.RATE];
        Arrays.setAll(noise, i -> 0.1 * random.nextGaussian());
        assertEquals(List.of(), parts(new MemoryAudio("noise", Sounding.RATE, noise)));
        // 3 dB up and down twice a second: quartiles 4.2 dB apart
        assertEquals(
                List.of(), parts(new Sounding(6).level(t -> 3 * Math.sin(4 * Math.PI * t)).mono()));
        // 1 dB: 1.4 dB apart
        assertEquals(1, parts(new Sounding(6).level(t -> Math.sin(4 * Math.PI * t)).mono()).size());
        // 1.5 % to either side: quartiles 2.1 % apart; 0.5 %: 0.7 %
        assertEquals(List.of(), parts(new Sounding(6).turning(wow(0.015)).mono()));
        assertEquals(1, parts(new Sounding(6).turning(wow(0.005)).mono()).size());
    }

    /** Turns under a frequency that moves by so much once a second. */
    private static DoubleUnaryOperator wow(double share) {
        return t -> Sounding.HZ * (t - share / (2 * Math.PI) * Math.cos(2 * Math.PI * t));
    }

    /** Less than twice eight cells tell no step. */
    @Test
    void aShortStretchHasNoParts() {
        assertEquals(List.of(), parts(new Sounding(0.8).mono()));
    }
}
