/** Stems sent through the machine one after another and brought back in time and level. */
package offtape.cli.transfer;
