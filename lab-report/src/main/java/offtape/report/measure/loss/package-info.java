/** Which causes of loss a measured response shows, how sure they are, and which look alike. */
package offtape.report.measure.loss;
