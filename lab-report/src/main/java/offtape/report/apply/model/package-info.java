/** A machine's model, fitted to the results of its session, and sound passed through it. */
package offtape.report.apply.model;
