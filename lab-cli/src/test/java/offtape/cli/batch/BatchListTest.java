package offtape.cli.batch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import offtape.core.audio.ChannelChoice;
import offtape.core.fault.UnusableInputException;
import offtape.core.transport.CaptureMode;
import offtape.core.unit.TapeSpeed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a list of returns may look like, and how one that cannot be understood is refused. */
class BatchListTest {

    private static final Path PROGRAMME = Path.of("programme");

    @TempDir private Path folder;

    private List<BatchEntry> read(String text, Path programme) throws IOException {
        Path list = folder.resolve("list.txt");
        return BatchList.read(Files.writeString(list, text), programme).entries();
    }

    private static List<String> names(List<BatchEntry> entries) {
        return entries.stream().map(BatchEntry::name).toList();
    }

    @Test
    void plainLinesAreFilesBesideTheList() throws IOException {
        List<BatchEntry> entries =
                read(
                        "\ufeff# Archiv\r\n\r\n Spule, zwei.wav \n\"#3 file.flac\"\n/x/y.aiff",
                        PROGRAMME);
        assertEquals(List.of("Spule, zwei", "#3 file", "y"), names(entries));
        assertEquals(
                List.of(
                        folder.resolve("Spule, zwei.wav"),
                        folder.resolve("#3 file.flac"),
                        Path.of("/x/y.aiff")),
                entries.stream().map(BatchEntry::file).toList());
        assertEquals(List.of(3, 4, 5), entries.stream().map(BatchEntry::line).toList());
    }

    @Test
    void aTableSaysOfEachReturnWhatDiffers() throws IOException {
        List<BatchEntry> entries =
                read(
                        """
                        # semicolons, as some spreadsheets write
                        note;File;programme;mode;machine-name;tape;tape-speed;channels;name
                        "two
                        ""lines\""";a.wav;slow;Two-Pass;Workshop; B 2 ;9.5cm/s;3,4;first
                        # b is left out
                        ;c.wav
                        """,
                        PROGRAMME);
        BatchEntry first =
                new BatchEntry(
                        3,
                        "a.wav",
                        folder.resolve("a.wav"),
                        "first",
                        folder.resolve("slow"),
                        CaptureMode.TWO_PASS,
                        "Workshop",
                        "B 2",
                        TapeSpeed.parse("3.75ips"),
                        ChannelChoice.parse("3,4"),
                        "two\n\"lines\"");
        assertEquals(first, entries.get(0));
        assertEquals(6, entries.get(1).line());
        assertEquals("c", entries.get(1).name());
        assertNull(entries.get(1).note());
        assertNull(entries.get(1).programme());
    }

    @Test
    void namesComeFromFilesAndAreMadeUnique() throws IOException {
        String list =
                "a/reel.wav\nb/reel.wav\n# c/reel.wav\nreel-2.flac\nREEL.aiff\n"
                        + "summary.csv.wav\n.x?.wav\na\u202e\u009bb.wav\n";
        assertEquals(
                List.of("reel", "reel-2", "reel-2-2", "REEL-3", "summary.csv-2", "_x_", "a__b"),
                names(read(list, PROGRAMME)));
    }

    @Test
    void aReturnThatIsListedAgainIsMeasuredOnce() throws IOException {
        Files.createDirectory(folder.resolve("b"));
        Files.writeString(folder.resolve("a.wav"), "");
        Files.createSymbolicLink(folder.resolve("link.wav"), Path.of("a.wav"));
        Path list =
                Files.writeString(
                        folder.resolve("list.txt"),
                        "a.wav\nb/a.wav\nb/../a.wav\nlink.wav\ngone.wav\n./gone.wav\n");
        ListedReturns listed = BatchList.read(list, PROGRAMME);
        assertEquals(List.of("a", "a-2", "gone"), names(listed.entries()));
        assertEquals(
                List.of(
                        list + ", line 3: b/../a.wav is in line 1 already and is measured once.",
                        list + ", line 4: link.wav is in line 1 already and is measured once.",
                        list + ", line 6: ./gone.wav is in line 5 already and is measured once."),
                listed.notes());
    }

    @Test
    void otherChannelsOfAFileAreAnotherReturn() throws IOException {
        String list = "file,channels,note\na.wav,,x\na.wav,\"3,4\",y\na.wav,\"4,3\",z\n";
        assertEquals(List.of("a", "a-2", "a-3"), names(read(list, PROGRAMME)));
    }

    /** One recording that passed for two machines would tell that they are alike. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "name;x;y",
                "name;x;",
                "programme;p;q",
                "mode;two-pass;off-tape",
                "machine-name;A;B",
                "tape;A;B",
                "tape-speed;7.5ips;15ips",
                "note;;B"
            })
    void whatSaysTwoThingsOfOneReturnIsRefused(String column) {
        String[] words = column.split(";", -1);
        String list = "file," + words[0] + "\na.wav," + words[1] + "\n./a.wav," + words[2] + "\n";
        refused(
                list,
                PROGRAMME,
                "line 3: ./a.wav is in line 2 already, with something else beside it. Leave one of"
                        + " the two out, or name other channels.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "file,name;a.wav,x;b.wav,X | line 3: \"X\" is the name of the session of line 2",
                "file,name;a.wav,../x | line 2: \"../x\" cannot be the name of a folder",
                "file,name;a.wav,x\u202ey | line 2: \"x\u202ey\" cannot be the name of a folder",
                "file,name;a.wav,summary.csv | line 2: \"summary.csv\" is the name of the summary",
                "file,taype;a.wav,x | line 1: there is no column \"taype\"; there are file, name,",
                "file,tape,tape;a.wav,x,y | line 1: the column tape is there twice",
                "file,note;a.wav,one, two | line 2: there are 3 cells for 2 columns",
                "file,mode;a.wav,tape | line 2: \"mode\" must be one of reference-tape,",
                "file,tape-speed;a.wav,fast | line 2: \"fast\" is not a tape speed",
                "file,channels;a.wav,left | line 2: \"left\" does not name channels",
                "note,file;a, | line 2: no file is named",
                "file,note;a.wav,\"b | line 2: a quote is not closed",
                "# nothing | names no return",
            })
    void aListThatCannotBeUnderstoodIsRefusedWithItsPlace(String lines, String sentence) {
        refused(lines.replace(';', '\n'), PROGRAMME, sentence);
    }

    @Test
    void somethingMustSayWhichProgrammeWasPlayed() {
        String list = "file,programme\na.wav,programme\nb.wav,\n";
        refused(list, null, "line 3: nothing says which programme was played.");
    }

    @Test
    void otherEncodingsAreRefused() throws IOException {
        Path list = folder.resolve("latin.txt");
        Files.write(list, "Größe.wav".getBytes(StandardCharsets.ISO_8859_1));
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> BatchList.read(list, PROGRAMME));
        assertEquals(list + " is not text in UTF-8. Save the list as UTF-8.", e.getMessage());
    }

    private void refused(String list, Path programme, String sentence) {
        UnusableInputException e =
                assertThrows(UnusableInputException.class, () -> read(list, programme));
        assertTrue(e.getMessage().contains(sentence), e.getMessage());
    }
}
