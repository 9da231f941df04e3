package offtape.cli.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TablesCommandTest {

    private static final String SEED =
            "/offtape/cli/fuzz/ResultsFuzzTestInputs/anyBytes/session.json";

    @TempDir private Path folder;

    private Path session;
    private Path out;

    @BeforeEach
    void session() throws IOException {
        session = Files.createDirectory(folder.resolve("session"));
        out = folder.resolve("curves.xlsx");
        try (InputStream in = TablesCommandTest.class.getResourceAsStream(SEED)) {
            Files.copy(in, session.resolve("results.json"));
        }
    }

    /** The response at 1 kHz and elsewhere stands in the session's results; see the seed. */
    @Test
    void curvesOfTheSessionAreNumbersOfItsSheets() throws IOException {
        Tool.Outcome told = Tool.run("tables", session, "--out", out);
        assertEquals(0, told.code(), told.err());
        String workbook = "";
        String response = "";
        try (ZipInputStream zip =
                new ZipInputStream(new ByteArrayInputStream(Files.readAllBytes(out)))) {
            int sheets = 0;
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                String text = new String(zip.readAllBytes(), StandardCharsets.UTF_8);
                workbook += e.getName().equals("xl/workbook.xml") ? text : "";
                boolean isResponse = text.contains("magnitude (dB re 1 kHz)");
                response = isResponse ? text : response;
                sheets += e.getName().startsWith("xl/worksheets/") ? 1 : 0;
            }
            assertEquals(18, sheets);
        }
        assertTrue(workbook.contains("sheet name=\"response\""), workbook);
        assertTrue(response.contains("<v>-7.804</v>"), response);
    }

    @Test
    void theSameSessionGivesTheSameBytesAndNothingIsOverwritten() throws IOException {
        assertEquals(0, Tool.run("tables", session, "--out", out).code());
        byte[] first = Files.readAllBytes(out);
        assertEquals(2, Tool.run("tables", session, "--out", out).code());
        assertEquals(0, Tool.run("tables", session, "--out", out, "--force").code());
        assertArrayEquals(first, Files.readAllBytes(out));
    }

    @Test
    void aFolderWithoutResultsIsRefused() throws IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        assertEquals(3, Tool.run("tables", empty, "--out", out).code());
        assertTrue(Files.notExists(out));
    }
}
