/** One thin class a command: options in, calls to the lab, words and files out. */
package offtape.cli.command;
