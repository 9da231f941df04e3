/** The test programme: cues, cue sheet and the signals themselves. */
package offtape.core.programme;
