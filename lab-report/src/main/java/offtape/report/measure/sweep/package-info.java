/** Sweeps followed in time, and the response they give. */
package offtape.report.measure.sweep;
