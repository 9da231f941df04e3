/** From a recording to results: runs every measure, and judges the recording itself. */
package offtape.report.measure;
