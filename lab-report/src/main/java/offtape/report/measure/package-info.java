/** One class a measure, each from the audio of its cues to a record of results. */
package offtape.report.measure;
