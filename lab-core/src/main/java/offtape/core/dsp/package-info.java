/**
 * Transforms, filters, windows, resampling and demodulation; the only user of the transform
 * library.
 */
package offtape.core.dsp;
