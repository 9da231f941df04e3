package offtape.report.workbook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Names of parts, elements and attributes as in ECMA-376, part 1, clauses 12.3 and 18, part 2. */
class WorkbookTest {

    private static final Workbook BOOK =
            new Workbook(
                    List.of(
                            new Sheet(
                                    "response",
                                    List.of(
                                            List.of(Cell.text("name"), Cell.text("level (dB)")),
                                            List.of(
                                                    Cell.text("=1+1 <&> \u001b"),
                                                    Cell.number("-7.5")),
                                            List.of(Cell.text(""), Cell.number("1E+2")))),
                            new Sheet("empty", List.of(List.of(Cell.text("head"))))));

    private static Map<String, Document> parts(Workbook book) {
        Map<String, Document> parts = new LinkedHashMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(book.bytes()))) {
            DocumentBuilderFactory parsers = DocumentBuilderFactory.newInstance();
            parsers.setNamespaceAware(true);
            for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
                byte[] content = zip.readAllBytes();
                parts.put(
                        e.getName(),
                        parsers.newDocumentBuilder().parse(new ByteArrayInputStream(content)));
            }
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        return parts;
    }

    private static List<Element> elements(Document part, String name) {
        NodeList found = part.getElementsByTagNameNS("*", name);
        List<Element> all = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            all.add((Element) found.item(i));
        }
        return all;
    }

    @Test
    void textsAreTextsAndNumbersNumbers() {
        List<Element> cells = elements(parts(BOOK).get("xl/worksheets/sheet1.xml"), "c");
        assertEquals(
                List.of("A1", "B1", "A2", "B2", "B3"),
                cells.stream().map(c -> c.getAttribute("r")).toList());
        assertEquals("inlineStr", cells.get(2).getAttribute("t"));
        assertEquals("=1+1 <&> \uFFFD", cells.get(2).getTextContent());
        assertEquals("", cells.get(3).getAttribute("t"));
        assertEquals("-7.5", cells.get(3).getTextContent());
        assertEquals("100", cells.get(4).getTextContent());
    }

    @Test
    void eachPartIsFoundByItsRelationAndHasAType() {
        Map<String, Document> parts = parts(BOOK);
        assertEquals("[Content_Types].xml", parts.keySet().iterator().next());
        assertEquals(
                List.of("xl/workbook.xml"),
                elements(parts.get("_rels/.rels"), "Relationship").stream()
                        .map(r -> r.getAttribute("Target"))
                        .toList());
        List<Element> sheets = elements(parts.get("xl/workbook.xml"), "sheet");
        assertEquals(
                List.of("response", "empty"),
                sheets.stream().map(s -> s.getAttribute("name")).toList());
        Map<String, String> targets = new LinkedHashMap<>();
        elements(parts.get("xl/_rels/workbook.xml.rels"), "Relationship")
                .forEach(r -> targets.put(r.getAttribute("Id"), r.getAttribute("Target")));
        List<String> typed =
                elements(parts.get("[Content_Types].xml"), "Override").stream()
                        .map(o -> o.getAttribute("PartName"))
                        .toList();
        for (Element sheet : sheets) {
            String target = "xl/" + targets.get(sheet.getAttribute("r:id"));
            assertTrue(parts.containsKey(target), target);
            assertTrue(typed.contains("/" + target), target);
        }
    }

    @Test
    void theSameSheetsAreTheSameBytes() throws IOException {
        assertArrayEquals(BOOK.bytes(), new Workbook(BOOK.sheets()).bytes());
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(BOOK.bytes()))) {
            assertEquals(1980, zip.getNextEntry().getTimeLocal().getYear());
        }
    }

    /** Columns count in letters: Z is followed by AA, ZZ by AAA (clause 18.3.1.4). */
    @ParameterizedTest
    @CsvSource({"0, A", "25, Z", "26, AA", "51, AZ", "52, BA", "701, ZZ", "702, AAA"})
    void columnsCountInLetters(int index, String letters) {
        assertEquals(letters, SheetXml.column(index));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "a/b", "a:b", "[a]", "12345678901234567890123456789012"})
    void namesThatSpreadsheetsRefuseAreRefused(String name) {
        assertThrows(IllegalArgumentException.class, () -> new Sheet(name, List.of()));
    }

    @Test
    void aWorkbookHasASheet() {
        assertThrows(IllegalArgumentException.class, () -> new Workbook(List.of()));
    }
}
