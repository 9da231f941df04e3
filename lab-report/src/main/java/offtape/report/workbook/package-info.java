/** Tables as a file that spreadsheets open, whatever language they are set to (ECMA-376). */
package offtape.report.workbook;
