/** Lines in a speed deviation: found by statistics, fitted, followed where they move. */
package offtape.report.measure.line;
