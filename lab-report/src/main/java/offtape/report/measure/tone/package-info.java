/** Steady tones resampled on their own phase: levels and harmonics as single lines. */
package offtape.report.measure.tone;
