/** What is known of faults, and from what was measured to what is likely wrong with the machine. */
package offtape.report.fault;
