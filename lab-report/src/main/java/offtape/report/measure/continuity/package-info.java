/** Whether a return is one unbroken stretch of sound: places at which its time jumps. */
package offtape.report.measure.continuity;
