/** Sound devices: what there are, and streams of frames out and in. */
package offtape.cli.sound;
