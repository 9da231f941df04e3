package offtape.report.workbook;

import java.util.List;
import offtape.core.text.InertText;

/** A sheet as XML of ECMA-376: the first row stays in sight, columns are as wide as their heads. */
final class SheetXml {

    private static final int LEAST_WIDTH = 10;
    private static final int MOST_WIDTH = 60;
    private static final int LETTERS = 26;

    private SheetXml() {}

    static String of(String namespace, Sheet sheet) {
        StringBuilder out = new StringBuilder();
        out.append("<worksheet xmlns=\"").append(namespace).append("\">");
        out.append("<sheetViews><sheetView workbookViewId=\"0\">")
                .append("<pane ySplit=\"1\" topLeftCell=\"A2\" activePane=\"bottomLeft\"")
                .append(" state=\"frozen\"/></sheetView></sheetViews>");
        columns(sheet, out);
        out.append("<sheetData>");
        int number = 1;
        for (List<Cell> row : sheet.rows()) {
            row(number++, row, out);
        }
        return out.append("</sheetData></worksheet>").toString();
    }

    private static void columns(Sheet sheet, StringBuilder out) {
        List<Cell> heads = sheet.rows().isEmpty() ? List.of() : sheet.rows().get(0);
        if (heads.isEmpty()) {
            return;
        }
        out.append("<cols>");
        for (int i = 0; i < heads.size(); i++) {
            int letters = heads.get(i).content().length() + 2;
            int width = Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, letters));
            out.append("<col min=\"").append(i + 1).append("\" max=\"").append(i + 1);
            out.append("\" width=\"").append(width).append("\" customWidth=\"1\"/>");
        }
        out.append("</cols>");
    }

    private static void row(int number, List<Cell> cells, StringBuilder out) {
        out.append("<row r=\"").append(number).append("\">");
        for (int i = 0; i < cells.size(); i++) {
            String place = column(i) + number;
            Cell cell = cells.get(i);
            if (cell.isNumber()) {
                out.append("<c r=\"").append(place).append("\"><v>");
                out.append(cell.content()).append("</v></c>");
            } else if (!cell.content().isEmpty()) {
                out.append("<c r=\"").append(place).append("\" t=\"inlineStr\"><is>");
                out.append("<t xml:space=\"preserve\">").append(escaped(cell.content()));
                out.append("</t></is></c>");
            }
        }
        out.append("</row>");
    }

    /** A, B … Z, AA, AB … */
    static String column(int index) {
        String last = String.valueOf((char) ('A' + index % LETTERS));
        return index < LETTERS ? last : column(index / LETTERS - 1) + last;
    }

    static String escaped(String text) {
        return InertText.lines(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("\uFFFE", "\uFFFD")
                .replace("\uFFFF", "\uFFFD");
    }
}
