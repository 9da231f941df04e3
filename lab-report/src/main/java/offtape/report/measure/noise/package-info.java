/** Noise of recorded silence. */
package offtape.report.measure.noise;
