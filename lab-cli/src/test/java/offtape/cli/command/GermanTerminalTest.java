package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import offtape.cli.sound.SoundLayers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the terminal says to a reader of German. */
class GermanTerminalTest {

    private static final Pattern ENGLISH =
            Pattern.compile("\\b(the|of|and|is|with|from|no|not|than|which|to|on)\\b");

    private static final int RATE = 8000;

    @TempDir private Path folder;

    private static Tool.Outcome german(String command, Object... words) {
        return Tool.run(Lab.line(Lab.line((Object) command, "--language", "de"), words));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
        speed | | Dieser Parameter muss angegeben werden: 'FILE'. Siehe „offtape speed --help“.
        speed | a.wav --polish | Die Option --polish gibt es nicht. Siehe „offtape speed --help“.
        speed | a.wav b.wav | b.wav ist ein Wort mehr, als der Befehl annimmt. Siehe „offtape speed --help“.
        polish | | Den Befehl polish gibt es nicht. Siehe „offtape --help“.
        speed | a.wav --frequency high | Unbrauchbarer Wert für die Option „--frequency“: „high“ ist keine Zahl. Siehe „offtape speed --help“.
        speed | a.wav --frequency 20 | --frequency muss zwischen 300 und 12000 Hz liegen. Siehe „offtape speed --help“.
        transfer | a.wav --out x --session s --k3 50 | Unbrauchbarer Wert für die Option „--k3“: „50“ ist kein K3 von 0 bis 30 %; zum Beispiel 1% schreiben. Siehe „offtape transfer --help“.
        prepare | --out a --out b | Die Option „--out“ (DIR) darf nur einmal angegeben werden. Siehe „offtape prepare --help“.
        prepare | --sample-rate | Der Option „--sample-rate“ (HZ) fehlt ihr Wert. Siehe „offtape prepare --help“.
        history | a | Der Parameter an Stelle 0..* (SESSION) braucht mindestens 2 Werte, angegeben sind nur 1: [a]. Siehe „offtape history --help“.
        """)
    void errorsAreSaidInGerman(String command, String more, String expected) {
        Tool.Outcome said = german(command, more == null ? Lab.line() : (Object[]) more.split(" "));
        assertEquals(2, said.code());
        assertEquals("offtape: " + expected + System.lineSeparator(), said.err());
    }

    /** 3000 Hz held against a nominal 3150 Hz: 150 Hz or 4.76 % slow. */
    @Test
    void readingsOfSpeedAreGermanAndWriteNumbersWithAComma() throws IOException {
        double[] tone =
                IntStream.range(0, 6 * RATE)
                        .mapToDouble(i -> 0.5 * Math.sin(2 * Math.PI * 3000 * i / RATE))
                        .toArray();
        Path file = folder.resolve("tone.wav");
        Files.write(file, Wav.PCM_16.of(RATE, tone));
        Tool.Outcome said = german("speed", file, "--frequency", "3150");
        assertEquals(0, said.code(), said.err());
        assertTrue(said.out().contains("Geschwindigkeitsabweichung  -4,76"), said.out());
        assertFalse(ENGLISH.matcher(said.out() + said.err()).find(), said.out() + said.err());
        Tool.Outcome figures = german("speed", file, "--frequency", "3150", "--json");
        assertEquals(Tool.run("speed", file, "--frequency", "3150", "--json").out(), figures.out());
    }

    @Test
    void theGuideIsLedInGermanAndSoAreItsCommands() {
        Tool.Outcome said =
                Tool.answering(new SoundLayers(List.of()), "devices\n6\nq\n", "--language", "de");
        assertEquals(0, said.code(), said.err());
        assertTrue(said.err().contains("Welcher Schritt (q beendet)"), said.err());
        assertFalse(ENGLISH.matcher(said.err()).find(), said.err());
    }
}
