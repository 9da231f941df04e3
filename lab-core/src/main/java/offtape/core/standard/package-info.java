/** One class a published standard: weightings, detectors, equalisations, losses. */
package offtape.core.standard;
