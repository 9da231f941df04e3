/** Distortion and compression against level, from ladders of tones. */
package offtape.report.measure.distortion;
