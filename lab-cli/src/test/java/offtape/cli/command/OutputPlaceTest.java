package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Where outputs may go, where not, and what --force may do. */
class OutputPlaceTest {

    @TempDir private static Path folder;

    private static Lab lab;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
    }

    @ParameterizedTest
    @MethodSource
    void isRefused(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefused() {
        return Stream.of(
                of("a file in the way", 2, "?", l -> prepare(l.file("file", "mine"))),
                of("a file above", 2, "?", l -> prepare(l.file("up", "mine").resolve("a/b"))),
                of(
                        "a folder of the user's",
                        2,
                        "?",
                        l -> prepare(l.file("mine/a.txt", "mine").getParent())),
                of(
                        "a folder where a file is to go",
                        2,
                        "?",
                        l ->
                                prepare(
                                        l.file("odd/programme.wav/a", "mine")
                                                .getParent()
                                                .getParent(),
                                        "--force")),
                of("a link that leads nowhere", 2, "?", l -> prepare(link(l))),
                of(
                        "a measurement into the user's folder",
                        2,
                        "?",
                        l ->
                                Stream.concat(
                                                Stream.of(l.measure(l.path("x.wav"))).limit(5),
                                                Stream.of(l.file("own/b.txt", "mine").getParent()))
                                        .toArray()),
                of(
                        "a demo into the user's folder",
                        2,
                        "?",
                        l -> Lab.line("demo", "--out", l.file("his/c.txt", "mine").getParent())));
    }

    private static Object[] prepare(Path out, String... more) {
        return Stream.concat(Stream.of("prepare", "--short", "--out", out), Stream.of(more))
                .toArray();
    }

    private static Path link(Lab l) {
        try {
            return Files.createSymbolicLink(l.path("link"), l.path("gone"));
        } catch (java.io.IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
