package offtape.report.render;

import java.util.List;
import java.util.Map;
import offtape.report.workbook.Cell;
import offtape.report.workbook.Sheet;
import offtape.report.workbook.Workbook;

/** Tables as the sheets of one workbook. */
final class TablesWorkbook {

    private static final String ENDING = ".csv";

    private TablesWorkbook() {}

    /** The bytes of a workbook with a sheet a table, named like its file. */
    static byte[] of(Map<String, CsvTable> tables) {
        List<Sheet> sheets =
                tables.entrySet().stream()
                        .map(table -> sheet(table.getKey(), table.getValue()))
                        .toList();
        return new Workbook(sheets).bytes();
    }

    private static Sheet sheet(String file, CsvTable table) {
        return new Sheet(
                file.replace(ENDING, ""),
                table.rows().stream()
                        .map(row -> row.stream().map(TablesWorkbook::cell).toList())
                        .toList());
    }

    private static Cell cell(CsvTable.Cell cell) {
        return cell.isNumber() ? Cell.number(cell.text()) : Cell.text(cell.text());
    }
}
