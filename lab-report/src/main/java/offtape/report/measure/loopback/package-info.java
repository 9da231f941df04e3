/** An interface known from a loopback session, and figures with it taken out. */
package offtape.report.measure.loopback;
