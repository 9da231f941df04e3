/** A steady sound played and its return measured while it comes in, with what to turn in words. */
package offtape.cli.lineup;
