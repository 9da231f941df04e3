package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** One return in every form of WAV file gives one set of figures. */
class WavFormsTest {

    @TempDir private static Path folder;

    /** Forms that hold the same samples in another wrapping. */
    private static final Map<Wav, Wav> SAME =
            Map.of(
                    Wav.EXTENSIBLE_24, Wav.PCM_24,
                    Wav.RF64_24, Wav.PCM_24,
                    Wav.BW64_FLOAT, Wav.FLOAT_32);

    /** What is measured; the others hold the samples of one of these. */
    private static final List<Wav> MEASURED = List.of(Wav.PCM_16, Wav.FLOAT_64);

    private static final Map<Wav, JsonNode> RESULTS = new EnumMap<>(Wav.class);
    private static final Map<Wav, Path> FILES = new EnumMap<>(Wav.class);

    @BeforeAll
    static void measureAll() {
        Lab lab = new Lab(folder);
        double[][] sound = Mini.sound();
        for (int c = 0; c < 2; c++) {
            double[] hiss = Lab.noise(7 + c, 1e-3, 23);
            for (int i = 0; i < sound[c].length; i++) {
                sound[c][i] += hiss[i];
            }
        }
        for (Wav form : Wav.values()) {
            Path file = lab.file(form + "/return.wav", form.of(Mini.RATE, sound));
            FILES.put(form, file);
            if (MEASURED.contains(form)) {
                RESULTS.put(form, lab.results(file));
            }
        }
    }

    private static double value(JsonNode results, String place) {
        JsonNode value = results.at(place + "/value");
        assertTrue(value.isNumber(), place);
        return value.asDouble();
    }

    /**
     * Against 64-bit float. 16 bits add white noise of 2⁻¹⁵/√12 = −101 dB re full scale to hiss of
     * −60 dB: 10·lg (1 + 10^−4.1) = 0.0003 dB more. On a tone of −18 dBFS (rms −21) it is −80 dB or
     * 0.01 % a sample, and a figure takes the mean of 10⁴ samples or more: 10⁻⁴ % and 10⁻⁵ dB.
     */
    @ParameterizedTest
    @EnumSource(names = "PCM_16")
    void figuresAgreeWithinTheQuantisation(Wav form) {
        JsonNode exact = RESULTS.get(Wav.FLOAT_64);
        JsonNode found = RESULTS.get(form);
        assertEquals(value(exact, "/speed/deviation"), value(found, "/speed/deviation"), 1e-4);
        assertEquals(
                value(exact, "/speed/weightedPeak"), value(found, "/speed/weightedPeak"), 1e-4);
        assertEquals(value(exact, "/timing/delay"), value(found, "/timing/delay"), 1e-3);
        assertEquals(value(exact, "/channels/balance"), value(found, "/channels/balance"), 1e-3);
        assertEquals(value(exact, "/noise/0/aWeighted"), value(found, "/noise/0/aWeighted"), 0.003);
        for (int i = 0; i < exact.at("/response/0/frequencyHz").size(); i++) {
            double hz = exact.at("/response/0/frequencyHz/" + i).asDouble();
            if (hz > 40 && hz < 16_000) {
                String place = "/response/0/magnitudeDb/" + i;
                assertEquals(exact.at(place).asDouble(), found.at(place).asDouble(), 0.02, hz + "");
            }
        }
    }

    /** The same samples give the same results, so it is enough that they are the same. */
    @ParameterizedTest
    @EnumSource(names = {"EXTENSIBLE_24", "RF64_24", "BW64_FLOAT"})
    void anotherWrappingHoldsTheSameSamples(Wav form) {
        assertArrayEquals(samples(SAME.get(form)), samples(form));
    }

    /**
     * Rounded to the nearest, samples are off by half a step at most; 24 bits of a float are worth
     * no less than those of a whole number.
     */
    @ParameterizedTest
    @CsvSource({"PCM_24, 24", "PCM_32, 32", "FLOAT_32, 24"})
    void longWordsHoldTheSamplesWithinHalfAStep(Wav form, int bits) {
        double[][] exact = samples(Wav.FLOAT_64);
        double[][] found = samples(form);
        for (int c = 0; c < 2; c++) {
            assertArrayEquals(exact[c], found[c], Math.scalb(1.0001, -bits));
        }
    }

    private static double[][] samples(Wav form) {
        try (AudioFile sound = AudioFiles.open(FILES.get(form))) {
            return sound.read(0, (int) sound.frames());
        }
    }
}
