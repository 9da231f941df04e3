/** Charts, the HTML report and the CSV files; the only user of the chart library and of AWT. */
package offtape.report.render;
