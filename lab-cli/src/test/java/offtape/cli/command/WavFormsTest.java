package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** One return in every form of WAV file gives one set of figures. */
class WavFormsTest {

    @TempDir private static Path folder;

    private static final Map<Wav, JsonNode> RESULTS = new EnumMap<>(Wav.class);

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
            RESULTS.put(form, lab.results(file));
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
    @EnumSource(Wav.class)
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

    @Test
    void theSameSamplesGiveTheSameResults() {
        assertEquals(figures(Wav.PCM_24), figures(Wav.EXTENSIBLE_24));
        assertEquals(figures(Wav.PCM_24), figures(Wav.RF64_24));
        assertEquals(figures(Wav.FLOAT_32), figures(Wav.BW64_FLOAT));
    }

    /** Everything but the digest and time stamp of the file. */
    private static JsonNode figures(Wav form) {
        ObjectNode figures = RESULTS.get(form).deepCopy();
        figures.remove("session");
        return figures;
    }
}
