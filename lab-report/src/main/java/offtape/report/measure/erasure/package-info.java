/** How much of a loud tone is left on a tape after silence was recorded over it. */
package offtape.report.measure.erasure;
