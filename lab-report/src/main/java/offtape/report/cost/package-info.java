/** What mending a machine costs, by the figures of its owner, against what a good one is worth. */
package offtape.report.cost;
