/** Audio files in and out, read in stretches so that length does not cost memory. */
package offtape.core.audio;
