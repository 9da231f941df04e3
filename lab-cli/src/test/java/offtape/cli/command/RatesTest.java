package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Recordings at other rates than the programme's, or resampled by a workstation. */
class RatesTest {

    @TempDir private static Path folder;

    private static Lab lab;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
    }

    private static double value(JsonNode results, String place) {
        JsonNode value = results.at(place + "/value");
        assertTrue(value.isNumber(), place + " " + results.at(place));
        return value.asDouble();
    }

    /** The tolerances are the accuracy stated for a clean machine. */
    private static void assertPerfect(JsonNode results, double topHz) {
        assertEquals(0, value(results, "/speed/deviation"), 0.0005);
        assertEquals(0, value(results, "/speed/weightedPeak"), 0.002);
        assertEquals(0, value(results, "/timing/delay"), 0.005);
        assertEquals(0, value(results, "/channels/balance"), 0.03);
        assertEquals(0, value(results, "/channels/interchannelDelay"), 0.05);
        JsonNode response = results.at("/response/0");
        int within = 0;
        for (int i = 0; i < response.get("frequencyHz").size(); i++) {
            double hz = response.at("/frequencyHz/" + i).asDouble();
            if (hz >= 40 && hz <= topHz) {
                assertEquals(0, response.at("/magnitudeDb/" + i).asDouble(), 0.03, hz + " Hz");
                within++;
            }
        }
        // twelfths of an octave from 40 Hz on
        assertTrue(within > 12 * Math.log(topHz / 40) / Math.log(2) - 2, within + " points");
    }

    @ParameterizedTest
    @ValueSource(ints = {44_100, 192_000})
    void higherRates(int rate) {
        Path file = lab.file("r" + rate + ".wav", Wav.FLOAT_32.of(rate, Mini.sound(rate)));
        assertPerfect(lab.results(file), 16_000);
        Tool.Outcome speed = Tool.run("speed", file);
        assertTrue(speed.out().contains("Speed deviation         0.000 % ± 0.005"), speed.out());
    }

    /** What lies beyond the recording's own band is unknown; all else is as good as ever. */
    @ParameterizedTest
    @ValueSource(ints = 6)
    void lowerRates(int factor) {
        int rate = Mini.RATE / factor;
        double[][] sound = Mini.sound();
        Path file =
                lab.file(
                        "r" + rate + ".wav",
                        Wav.FLOAT_32.of(
                                rate, thinned(sound[0], factor), thinned(sound[1], factor)));
        JsonNode results = lab.results(file);
        assertPerfect(results, 0.4 * rate);
        assertTrue(results.at("/noise/0/aWeighted/value").isNull());
        String reason = results.at("/noise/0/itu468/reason").asText();
        assertTrue(reason.startsWith("The recording has " + rate + " frames a second"), reason);
        assertEquals("narrow-band", results.at("/health/0/code").asText());
        Tool.Outcome speed = Tool.run("speed", file);
        assertTrue(speed.out().contains("Speed deviation         0.000 % ± 0.005"), speed.out());
    }

    /**
     * Every n-th sample behind a low-pass of 48 lobes with a Blackman window, whose side lobes lie
     * 75 dB down: it passes up to 0.46 of the new rate and stops from 0.54 on (the window's main
     * lobe reaches 3 / 96 of the new rate to either side).
     */
    private static double[] thinned(double[] x, int factor) {
        int half = 48 * factor;
        double[] taps = new double[2 * half + 1];
        for (int k = -half; k <= half; k++) {
            double t = Math.PI * k / factor;
            double sinc = k == 0 ? 1 : Math.sin(t) / t;
            double turn = Math.PI * k / half;
            taps[half + k] =
                    sinc * (0.42 + 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn)) / factor;
        }
        double[] y = new double[x.length / factor];
        Arrays.setAll(y, i -> at(x, taps, i * factor - half));
        return y;
    }

    private static double at(double[] x, double[] taps, int from) {
        double sum = 0;
        for (int k = Math.max(0, -from); k < Math.min(taps.length, x.length - from); k++) {
            sum += taps[k] * x[from + k];
        }
        return sum;
    }
}
