/** Several replays of one recording: their readings, and what repeats with the tape. */
package offtape.report.measure.pass;
