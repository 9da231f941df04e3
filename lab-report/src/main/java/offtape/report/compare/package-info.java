/**
 * Sessions set against each other: what may be compared, what changed, and whether that is real.
 */
package offtape.report.compare;
