/** Everything that is read from files, given any bytes: it works or is refused in words. */
package offtape.cli.fuzz;
