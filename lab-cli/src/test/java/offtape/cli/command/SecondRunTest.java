package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import offtape.cli.sound.LoopLayer;
import offtape.cli.sound.LoopMachine;
import offtape.cli.sound.SoundLayers;
import offtape.core.output.OutputFile;
import offtape.core.output.OutputFolder;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every command that writes, while another run is writing into the same place: refused in words,
 * even with --force, and nothing is touched.
 */
class SecondRunTest {

    private static final String FOLDER = "--out";
    private static final String FILE = "name";

    @TempDir private static Path folder;

    private static Lab lab;
    private static Stems stems;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
        stems = new Stems(folder.resolve("desk"));
        stems.stem("in.wav", Stems.noise(4000, 0.5));
        lab.same("return.wav", lab.programme().resolve("programme.wav"));
        lab.file("list.txt", "return.wav\n");
        lab.file("machine.json", "{\"format\": \"offtape-machine\", \"version\": 1}");
        Tool.Outcome session =
                Tool.run(Lab.line(lab.measure(lab.path("return.wav")), "--mode", "off-tape"));
        assertEquals(0, session.code(), session.err());
    }

    /**
     * A command.
     *
     * @param place what it writes, below the workshop
     * @param other what the refusal says may be chosen instead: another --out for folders, another
     *     name for files
     * @param words its line; {@code @name} is a place in the workshop
     */
    record Case(String place, String other, String... words) {

        @Override
        public String toString() {
            return String.join(" ", words);
        }

        Object[] line() {
            return Arrays.stream(words)
                    .map(w -> w.startsWith("@") ? lab.path(w.substring(1)).toString() : w)
                    .toArray();
        }
    }

    static Stream<Case> isRefused() {
        return Stream.of(
                new Case("p", FOLDER, "prepare", "--short", "--out", "@p"),
                new Case("form", FILE, "prepare", "--transport-template", "@form"),
                new Case("demo", FOLDER, "demo", "--out", "@demo"),
                new Case("c.wav", FILE, "capture", "--programme", "@programme", "--out", "@c.wav"),
                new Case(
                        "cs",
                        FOLDER,
                        "capture",
                        "--programme",
                        "@programme",
                        "--out",
                        "@c2.wav",
                        "--measure",
                        "@cs"),
                new Case(
                        "m",
                        FOLDER,
                        "measure",
                        "@return.wav",
                        "--programme",
                        "@programme",
                        "--out",
                        "@m"),
                new Case(
                        "b",
                        FOLDER,
                        "measure",
                        "--batch",
                        "@list.txt",
                        "--programme",
                        "@programme",
                        "--out",
                        "@b"),
                new Case("t", FOLDER, "tones", "@return.wav", "--out", "@t"),
                new Case("tones.json", FILE, "tones", "--list-template", "@tones.json"),
                new Case("vs", FOLDER, "compare", "@session", "@session", "--out", "@vs"),
                new Case("h", FOLDER, "history", "@session", "@session", "--out", "@h"),
                new Case("fix", FOLDER, "correct", "@session", "--out", "@fix"),
                new Case(
                        "back.wav",
                        FILE,
                        "realign",
                        "@return.wav",
                        "@return.wav",
                        "--out",
                        "@back.wav"),
                new Case("back", FOLDER, "realign", "@programme", "@programme", "--out", "@back"),
                new Case(
                        "sent",
                        FOLDER,
                        "transfer",
                        "--session",
                        "@desk/session",
                        "@desk/in.wav",
                        "--out",
                        "@sent",
                        "--no-settings"),
                new Case(
                        "heard.wav",
                        FILE,
                        "preview",
                        "--session",
                        "@session",
                        "@desk/in.wav",
                        "--out",
                        "@heard.wav"),
                new Case("model", FOLDER, "preview", "--session", "@session", "--model", "@model"),
                new Case(
                        "page.html",
                        FILE,
                        "listen",
                        "@return.wav",
                        "@return.wav",
                        "--as-they-are",
                        "--out",
                        "@page.html"),
                new Case(
                        "sim.wav",
                        FILE,
                        "simulate",
                        "--programme",
                        "@programme",
                        "--machine",
                        "@machine.json",
                        "--out",
                        "@sim.wav"));
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Case c) throws Exception {
        Path place = lab.path(c.place());
        SoundLayers devices =
                c.words()[0].equals("transfer")
                        ? new LoopLayer(LoopMachine.wire(100)).layers()
                        : new SoundLayers(List.of(new MadeUpLayer("loop")));
        AutoCloseable first = first(c, place);
        try {
            Map<String, Long> before = lab.tree();
            Tool.Outcome second = Tool.run(devices, Lab.line(c.line(), "--force"));
            String[] said = second.err().split("\n");
            assertEquals(
                    "offtape: Another run is just writing "
                            + place(place)
                            + ". Wait until it has finished or choose another "
                            + c.other()
                            + ".",
                    said[said.length - 1],
                    second.err());
            assertEquals(2, second.code());
            assertEquals("", second.out());
            assertEquals(before, lab.tree());
        } finally {
            first.close();
        }
    }

    private static Path place(Path named) throws IOException {
        return named.getParent().toRealPath().resolve(named.getFileName());
    }

    // a folder that appeared while the first run is still at work, which is the harder case
    private static AutoCloseable first(Case c, Path place) {
        if (c.other().equals(FILE)) {
            return OutputFile.open(place, false);
        }
        OutputFolder first = OutputFolder.open(place, false);
        first.write("first", new byte[] {1});
        first.publish();
        return first;
    }
}
