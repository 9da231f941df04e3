/** Decoding of FLAC streams (RFC 9639), from bytes to whole numbers. */
package offtape.core.audio.flac;
