package offtape.cli.guide;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import offtape.cli.sound.DeviceSide;
import offtape.cli.sound.SoundDevice;
import offtape.cli.sound.SoundLayer;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.SoundStream;
import offtape.cli.sound.SoundTroubleException;
import offtape.cli.sound.StreamRequest;
import offtape.cli.terminal.Terminal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is asked, which commands follow from the answers, and what a failed one changes. */
class GuideTest {

    private static final DeviceSide EIGHT = new DeviceSide(8, List.of(48_000), List.of(24), null);

    private static final SoundLayer LAYER =
            new SoundLayer() {
                @Override
                public String name() {
                    return "made up";
                }

                @Override
                public List<SoundDevice> devices() {
                    return List.of(new SoundDevice("made up", "Interface", "", EIGHT, EIGHT));
                }

                @Override
                public SoundStream open(StreamRequest request) {
                    throw new SoundTroubleException("not needed");
                }
            };

    @TempDir private Path folder;

    private final List<String> run = new ArrayList<>();
    private final List<Path> opened = new ArrayList<>();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private String failing = "none";

    private int guide(String... answers) {
        PrintStream stream = new PrintStream(err, true, StandardCharsets.UTF_8);
        Terminal terminal =
                Terminal.of(
                        stream,
                        stream,
                        new BufferedReader(new StringReader(String.join("\n", answers) + "\n")));
        return new Guide(terminal, new SoundLayers(List.of(LAYER)), this::run, opened::add, folder)
                .run();
    }

    /** Stands for the commands: writes what they would. */
    private int run(List<String> words) {
        run.add(CommandLines.typed(words).replace(folder.toString(), "HERE"));
        if (words.contains(failing)) {
            return 4;
        }
        for (String option : List.of("--out", "--measure")) {
            int at = words.indexOf(option);
            if (at >= 0) {
                make(Path.of(words.get(at + 1)));
            }
        }
        return 0;
    }

    private static void make(Path path) {
        try {
            if (path.toString().endsWith(".wav")) {
                Files.createFile(path);
            } else {
                Files.createDirectory(path);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String words() {
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void enterLeadsThroughAllOfIt() {
        int code =
                guide(
                        "",
                        "Deck of the attic",
                        "1",
                        "7.5ips",
                        "short", // machine
                        "",
                        "1",
                        "5,6",
                        "1",
                        "3,4", // devices
                        "",
                        "", // loopback
                        "", // line-up
                        "",
                        "", // capture
                        "", // measure
                        "", // report
                        "q");
        assertEquals(0, code);
        String here = "HERE/offtape-sessions/";
        String programme = " --programme " + here + "programme-7.5ips-short";
        String devices =
                " --layer \"made up\" --output Interface --output-channels 5,6"
                        + " --input Interface --input-channels 3,4";
        assertEquals(
                List.of(
                        "offtape prepare --out "
                                + here
                                + "programme-7.5ips-short --tape-speed 7.5ips --short",
                        "offtape capture"
                                + programme
                                + " --out "
                                + here
                                + "loopback.wav --mode loopback --measure "
                                + here
                                + "loopback"
                                + devices,
                        "offtape lineup" + programme + devices,
                        "offtape capture"
                                + programme
                                + " --out "
                                + here
                                + "return.wav --mode off-tape"
                                + devices,
                        "offtape measure "
                                + here
                                + "return.wav"
                                + programme
                                + " --out "
                                + here
                                + "session --mode off-tape --tape-speed 7.5ips --machine-name"
                                + " \"Deck of the attic\" --loopback "
                                + here
                                + "loopback"),
                run);
        assertEquals(1, opened.size());
        assertTrue(opened.get(0).endsWith("offtape-sessions/session/report.html"));
        for (String line : run) {
            assertTrue(words().replace(folder.toString(), "HERE").contains(line), line);
        }
    }

    @Test
    void twoHeadsRecordAndThenReplay() {
        guide("machine", "Deck", "2", "", "", "capture", "", "", "q");
        assertEquals(3, run.size());
        assertTrue(run.get(1).contains("--pass record"), run.get(1));
        assertFalse(run.get(1).contains("--out"), run.get(1));
        assertTrue(run.get(2).contains("--pass replay --mode two-pass"), run.get(2));
    }

    /** A second take replaces nothing, and what failed is said and can be repeated. */
    @Test
    void stepsCanBeRepeated() {
        guide("5", "", "5", "", "measure", "q");
        assertTrue(run.get(1).contains("return.wav"), run.get(1));
        assertTrue(run.get(2).contains("return-2.wav"), run.get(2));
        assertTrue(run.get(3).contains("measure HERE/offtape-sessions/return-2.wav"), run.get(3));
        failing = "measure";
        guide("5", "", "measure", "report", "q");
        assertTrue(words().contains("The step \"measure\" is not done; it can be repeated."));
        assertTrue(words().contains("Nothing was measured yet"));
        assertTrue(opened.isEmpty());
    }

    @Test
    void wrongAnswersAndTheEndOfAnswersAreNoFault() {
        assertEquals(0, guide("9", "machine", "Deck", "7", "1", "Deck", "1", "fast"));
        assertTrue(words().contains("\"9\" is no step."));
        assertEquals(List.of(), run);
    }

    @Test
    void aPageIsOpenedByTheWayOfThePlatform() {
        Path page = Path.of("report.html");
        assertEquals(
                List.of("open", "report.html"),
                PageOpener.command("Mac OS X", Map.of(), page).orElseThrow());
        assertEquals(
                "rundll32", PageOpener.command("Windows 11", Map.of(), page).orElseThrow().get(0));
        assertEquals(
                "xdg-open",
                PageOpener.command("Linux", Map.of("DISPLAY", ":0"), page).orElseThrow().get(0));
        assertTrue(PageOpener.command("Linux", Map.of(), page).isEmpty());
    }
}
