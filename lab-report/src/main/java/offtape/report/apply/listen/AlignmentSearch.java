package offtape.report.apply.listen;

import offtape.core.align.Alignment;
import offtape.core.audio.AudioSource;

/** A way to find where a returned sound lies against its original. */
@FunctionalInterface
public interface AlignmentSearch {

    /**
     * Finds it.
     *
     * @param original the sound that went out
     * @param returned what may be its return, with as many channels
     * @throws offtape.core.fault.UnusableInputException if the one is not found in the other
     */
    Alignment find(AudioSource original, AudioSource returned);
}
