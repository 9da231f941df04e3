/** Stems sent through the machine and brought back in time. */
package offtape.cli.transfer;
