package offtape.report.workbook;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A workbook of Office Open XML (ECMA-376, part 1: SpreadsheetML) with nothing but sheets of texts
 * and numbers: no formulas, links, macros or styles. Same sheets, same bytes on every Java: its
 * parts are stored as they are, since compressors differ, and bear no date.
 *
 * @param sheets in the order in which they are shown, at least one
 */
public record Workbook(List<Sheet> sheets) {

    private static final String NAMESPACE =
            "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private static final String RELATIONS =
            "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private static final String PACKAGE_RELATIONS =
            "http://schemas.openxmlformats.org/package/2006/relationships";
    private static final String CONTENT_TYPES =
            "http://schemas.openxmlformats.org/package/2006/content-types";
    private static final String TYPE =
            "application/vnd.openxmlformats-officedocument.spreadsheetml.";

    /** The first day that the container knows. */
    private static final LocalDateTime NO_DATE = LocalDateTime.of(1980, 1, 1, 0, 0);

    /** Refuses a workbook without sheets, which none opens. */
    public Workbook {
        sheets = List.copyOf(sheets);
        if (sheets.isEmpty()) {
            throw new IllegalArgumentException("a workbook has a sheet at least");
        }
    }

    /** The file. */
    public byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            part(zip, "[Content_Types].xml", contentTypes());
            part(zip, "_rels/.rels", relations(relation(1, "officeDocument", "xl/workbook.xml")));
            part(zip, "xl/workbook.xml", workbook());
            part(zip, "xl/_rels/workbook.xml.rels", sheetRelations());
            for (int i = 0; i < sheets.size(); i++) {
                part(zip, "xl/" + place(i), SheetXml.of(NAMESPACE, sheets.get(i)));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static void part(ZipOutputStream zip, String name, String xml) throws IOException {
        String text = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>\n" + xml;
        byte[] content = text.getBytes(StandardCharsets.UTF_8);
        CRC32 sum = new CRC32();
        sum.update(content);
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_DATE);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(content.length);
        entry.setCrc(sum.getValue());
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }

    private String contentTypes() {
        StringBuilder out = new StringBuilder();
        out.append("<Types xmlns=\"").append(CONTENT_TYPES).append("\">");
        out.append("<Default Extension=\"rels\" ContentType=\"")
                .append("application/vnd.openxmlformats-package.relationships+xml\"/>");
        override(out, "/xl/workbook.xml", "sheet.main+xml");
        for (int i = 0; i < sheets.size(); i++) {
            override(out, "/xl/" + place(i), "worksheet+xml");
        }
        return out.append("</Types>").toString();
    }

    private static void override(StringBuilder out, String part, String type) {
        out.append("<Override PartName=\"").append(part);
        out.append("\" ContentType=\"").append(TYPE).append(type).append("\"/>");
    }

    private String workbook() {
        StringBuilder out = new StringBuilder();
        out.append("<workbook xmlns=\"").append(NAMESPACE);
        out.append("\" xmlns:r=\"").append(RELATIONS).append("\"><sheets>");
        for (int i = 0; i < sheets.size(); i++) {
            out.append("<sheet name=\"").append(SheetXml.escaped(sheets.get(i).name()));
            out.append("\" sheetId=\"").append(i + 1);
            out.append("\" r:id=\"rId").append(i + 1).append("\"/>");
        }
        return out.append("</sheets></workbook>").toString();
    }

    private String sheetRelations() {
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < sheets.size(); i++) {
            out.append(relation(i + 1, "worksheet", place(i)));
        }
        return relations(out.toString());
    }

    private static String relations(String inner) {
        return "<Relationships xmlns=\"" + PACKAGE_RELATIONS + "\">" + inner + "</Relationships>";
    }

    private static String relation(int id, String type, String target) {
        return String.format(
                Locale.ROOT,
                "<Relationship Id=\"rId%d\" Type=\"%s/%s\" Target=\"%s\"/>",
                id,
                RELATIONS,
                type,
                target);
    }

    private static String place(int sheet) {
        return "worksheets/sheet" + (sheet + 1) + ".xml";
    }
}
