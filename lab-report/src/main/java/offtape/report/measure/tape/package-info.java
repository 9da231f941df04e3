/** The steady tones of a calibration tape: found, named, measured, set against each other. */
package offtape.report.measure.tape;
