/** What to do to a programme before the machine so that it comes back as wanted. */
package offtape.report.apply.correct;
