/** Finds the programme in the return: where each cue lies, as a map of time. */
package offtape.report.locate;
