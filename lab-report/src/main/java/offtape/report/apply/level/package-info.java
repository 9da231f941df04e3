/** How hot to record on a machine: levels at which it bends, and the noise below them. */
package offtape.report.apply.level;
