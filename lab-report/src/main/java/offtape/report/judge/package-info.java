/** Measured figures held against limits, with regard to how well they are known. */
package offtape.report.judge;
