/**
 * Many returns measured in one go: their list, what is left alone, how many at once, the summary.
 */
package offtape.cli.batch;
