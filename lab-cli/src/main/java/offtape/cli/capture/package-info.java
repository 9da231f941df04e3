/** Playing and recording at the same time, without gaps, to and from files. */
package offtape.cli.capture;
