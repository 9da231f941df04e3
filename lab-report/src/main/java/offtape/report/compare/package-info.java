/**
 * Sessions set against each other: what may be compared, what changed, whether that is real, and
 * which faults went or came.
 */
package offtape.report.compare;
