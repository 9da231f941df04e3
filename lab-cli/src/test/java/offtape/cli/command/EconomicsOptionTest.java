package offtape.cli.command;

import static offtape.cli.command.Lab.Case.of;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is said of money on the command line and makes no sense. */
class EconomicsOptionTest {

    @TempDir private static Path folder;

    private static Lab lab;

    @BeforeAll
    static void aWorkshop() {
        lab = new Lab(folder);
    }

    @ParameterizedTest
    @MethodSource
    void isRefusedBeforeAnythingIsMeasured(Lab.Case c) {
        lab.check(c);
    }

    static Stream<Lab.Case> isRefusedBeforeAnythingIsMeasured() {
        return Stream.of(
                of(
                        "no such file",
                        3,
                        "{lab}/none.json cannot be read. Check that it is there and may be read.",
                        l -> costs(l, l.path("none.json"))),
                of(
                        "a negative sum",
                        3,
                        "{lab}/negative.json: \"paid\" is -1; it must lie between 0 and 999999999"
                                + " EUR.",
                        l -> costs(l, written("negative.json", "\"paid\": -1"))),
                of(
                        "a sum in words",
                        3,
                        "{lab}/words.json: paid: the value is not of the kind that belongs here (line"
                                + " 1, column 74).",
                        l -> costs(l, written("words.json", "\"paid\": \"a lot\""))),
                of(
                        "no form of ours",
                        3,
                        "{lab}/form.json: A file of costs has the format \"offtape-economics\" and the"
                                + " version 1.",
                        l -> costs(l, l.file("form.json", "{\"format\": \"other\"}"))),
                of(
                        "hours that shrink",
                        3,
                        "{lab}/hours.json: repairs[0]: \"hoursLow\" is more than \"hoursHigh\".",
                        l ->
                                costs(
                                        l,
                                        written(
                                                "hours.json",
                                                "\"paid\": 1, \"repairs\": [{\"fault\": \"belt\","
                                                        + " \"hoursLow\": 3, \"hoursHigh\": 2}]"))));
    }

    private static Object[] costs(Lab l, Path file) {
        return Lab.line(l.measure(l.path("return.wav")), "--economics", file);
    }

    private static Path written(String name, String members) {
        return lab.file(
                name,
                "{\"format\": \"offtape-economics\", \"version\": 1, \"currency\": \"EUR\", "
                        + members
                        + ", \"valueOfAGoodOne\": 5, \"hourlyRate\": 5}");
    }
}
