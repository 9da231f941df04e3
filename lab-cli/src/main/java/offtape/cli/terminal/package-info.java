/** Words, progress and exit codes; the only user of the standard streams. */
package offtape.cli.terminal;
