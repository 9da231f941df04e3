/** What one channel does compared with the other, and losses of level in time. */
package offtape.report.measure.channel;
