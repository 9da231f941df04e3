package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import offtape.cli.transfer.PreEmphasis;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sessions written by hand, corrected from the terminal. */
class CorrectCommandTest {

    private static final String CHANNEL =
            """
            {"channel": "%s", "levelDb": -20, "frequencyHz": [%s], "magnitudeDb": [%s],
             "uncertaintyDb": [%s], "lowerEdge": {"value": null, "reason": "No edge."},
             "upperEdge": {"value": null, "reason": "No edge."},
             "ripple": {"value": null, "reason": "None."}, "rippleFromHz": 20, "rippleToHz": 20000,
             "bands": [], "contour": [], "harmonics": []}
            """;

    @TempDir private Path folder;

    private Path session;
    private Path out;

    @BeforeEach
    void sessions() throws IOException {
        session = session("deck", "off-tape", channel("left") + "," + channel("right"));
        out = folder.resolve("out");
    }

    /** Flat up to 2 kHz, then falling by 2 dB an octave. */
    private static String channel(String name) {
        double[] hz = IntStream.range(0, 200).mapToDouble(i -> 18 * Math.pow(1.036, i)).toArray();
        return CHANNEL.formatted(
                name,
                numbers(hz),
                numbers(
                        IntStream.range(0, hz.length)
                                .mapToDouble(
                                        i -> -2 * Math.max(0, Math.log(hz[i] / 2000) / Math.log(2)))
                                .toArray()),
                numbers(new double[hz.length]));
    }

    private static String numbers(double... values) {
        return java.util.Arrays.stream(values)
                .mapToObj(x -> String.format(Locale.ROOT, "%.6f", x))
                .collect(Collectors.joining(","));
    }

    private Path session(String name, String mode, String responses) throws IOException {
        String text =
                """
                {"format": "offtape-results", "version": 1,
                 "session": {"machineName": "Deck A", "tape": null, "tapeSpeedMmPerS": 190.5,
                   "mode": "%s", "madeAt": "2026-03-14T12:00:00Z", "note": null,
                   "software": "offtape", "recordingSha256": "%s", "recordingSampleRate": 44100,
                   "referenceDbfs": -18.0},
                 "response": [%s], "distortion": [], "noise": [], "dropouts": [], "health": [],
                 "losses": [],
                 "verdict": {"decision": "keep", "because": [], "checks": [], "faults": [],
                   "next": [], "cautions": []}}
                """
                        .formatted(mode, "0a".repeat(32), responses);
        Path place = Files.createDirectories(folder.resolve(name));
        Files.writeString(place.resolve("results.json"), text);
        return place;
    }

    private Tool.Outcome correct(Object... args) {
        Object[] all = new Object[args.length + 3];
        all[0] = "correct";
        System.arraycopy(args, 0, all, 1, args.length);
        all[args.length + 1] = "--out";
        all[args.length + 2] = out;
        return Tool.run(all);
    }

    @Test
    void filtersAreWrittenThatTransferLoads() throws IOException {
        Tool.Outcome done =
                correct(session, "--rate", "48000,44100,48000", "--bands", "1", "--json");
        assertEquals(0, done.code(), done.err());
        JsonNode json = new ObjectMapper().readTree(done.out());
        assertEquals("offtape-correction", json.get("format").asText());
        assertEquals(json, new ObjectMapper().readTree(out.resolve("correction.json").toFile()));
        for (int rate : new int[] {44_100, 48_000}) {
            PreEmphasis before = PreEmphasis.read(out.resolve("pre-emphasis-" + rate + ".wav"));
            PreEmphasis after = PreEmphasis.read(out.resolve("after-tape-" + rate + ".wav"));
            assertEquals(rate, before.sampleRateHz());
            assertArrayEquals(before.response(), after.response());
        }
        assertTrue(done.err().contains("Next: before the tape, turn the programme down"));
        // the session's own rate comes first in what to do
        assertTrue(done.err().contains("pre-emphasis-44100.wav"), done.err());
        assertTrue(done.err().contains("headroom unknown"), done.err());
    }

    @Test
    void theSameSessionGivesTheSameBytes() throws IOException {
        assertEquals(0, correct(session, "--quiet", "--bands", "1", "--rate", "44100").code());
        byte[] first = Files.readAllBytes(out.resolve("correction.json"));
        byte[] filter = Files.readAllBytes(out.resolve("pre-emphasis-44100.wav"));
        Tool.Outcome again = correct(session, "--quiet", "--bands", "1", "--rate", "44100");
        assertEquals(0, again.code(), again.err());
        assertEquals("", again.out() + again.err());
        assertArrayEquals(first, Files.readAllBytes(out.resolve("correction.json")));
        assertArrayEquals(filter, Files.readAllBytes(out.resolve("pre-emphasis-44100.wav")));
    }

    @Test
    void whatCannotBeCorrectedIsRefused() throws IOException {
        Tool.Outcome none = correct(session("none", "off-tape", ""));
        assertEquals(3, none.code());
        assertTrue(none.err().contains("no frequency response"), none.err());
        Tool.Outcome loop = correct(session("loop", "loopback", channel("left")));
        assertEquals(3, loop.code());
        assertTrue(loop.err().contains("loopback session"), loop.err());
        assertEquals(3, correct(folder.resolve("nothing")).code());
        assertEquals(3, correct(session, "--music", session.resolve("results.json")).code());
        assertEquals(3, correct(session, "--also", folder).code());
        assertFalse(Files.exists(out));
    }

    @Test
    void wrongUsageIsTold() {
        assertEquals(2, correct(session, "--rate", "7999").code());
        assertEquals(2, correct(session, "--rate", "500000").code());
        assertEquals(2, correct(session, "--rate", "fast").code());
        assertEquals(2, correct(session, "--bands", "0").code());
        assertEquals(2, correct(session, "--most-boost", "-1").code());
        assertEquals(2, correct(session, "--most-cut", "NaN").code());
        assertEquals(2, correct(session, "--k3", "0").code());
        assertEquals(2, correct(session, "--verify", "machine.json").code());
        assertEquals(2, Tool.run("correct", session).code());
    }

    @Test
    void nothingThatIsReadIsWrittenOver() throws IOException {
        Files.createDirectories(out);
        Path target = Files.writeString(out.resolve("correction.csv"), "100,1\n10000,0\n");
        Tool.Outcome refused = correct(session, "--target", target, "--force");
        assertEquals(2, refused.code());
        assertTrue(refused.err().contains("is read here"), refused.err());
        assertEquals("100,1\n10000,0\n", Files.readString(target));
    }

    @Test
    void foreignFilesStayWithoutForce() throws IOException {
        Files.createDirectories(out);
        Path mine = Files.writeString(out.resolve("settings.txt"), "mine");
        assertEquals(2, correct(session).code());
        assertEquals("mine", Files.readString(mine));
        assertEquals(0, correct(session, "--force", "--bands", "1", "--rate", "8000").code());
    }
}
