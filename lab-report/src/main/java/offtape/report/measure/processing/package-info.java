/** Traces of processing in the path that no tape machine leaves: what was still switched on. */
package offtape.report.measure.processing;
