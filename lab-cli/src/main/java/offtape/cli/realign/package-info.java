/** Returned tracks put back in time with their originals, and what is said of each. */
package offtape.cli.realign;
