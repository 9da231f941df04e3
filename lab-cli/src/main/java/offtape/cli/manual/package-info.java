/** What describes the commands outside of them: manual pages and the completion of shells. */
package offtape.cli.manual;
