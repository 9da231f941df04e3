package offtape.report.workbook;

import java.math.BigDecimal;

/**
 * What stands in one place of a sheet.
 *
 * @param content a text, or a number with a decimal point
 * @param isNumber whether a spreadsheet may reckon with it
 */
public record Cell(String content, boolean isNumber) {

    /** A text, which no spreadsheet takes for a formula or a number. */
    public static Cell text(String text) {
        return new Cell(text, false);
    }

    /**
     * A number.
     *
     * @throws NumberFormatException if it is none
     */
    public static Cell number(String plain) {
        return new Cell(new BigDecimal(plain).toPlainString(), true);
    }
}
