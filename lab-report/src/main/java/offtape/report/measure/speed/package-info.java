/** Speed and its modulation, from a steady tone. */
package offtape.report.measure.speed;
