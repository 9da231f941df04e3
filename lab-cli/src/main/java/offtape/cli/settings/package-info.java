/** What is remembered for a user from one run to the next. */
package offtape.cli.settings;
