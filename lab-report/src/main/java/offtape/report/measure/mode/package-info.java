/** Which motion wrote the tape and which one read it, and what a recording cannot know for that. */
package offtape.report.measure.mode;
