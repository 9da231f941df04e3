/** Leads somebody at a terminal through measuring a machine, by the commands that do it. */
package offtape.cli.guide;
