/** The transport's own motion, found from a return in which record and replay head heard it. */
package offtape.report.measure.transport;
