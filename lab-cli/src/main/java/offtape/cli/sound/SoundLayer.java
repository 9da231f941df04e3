package offtape.cli.sound;

import java.util.List;

/** One of the ways in which this computer's sound devices can be reached. */
public interface SoundLayer {

    /** A short name of the way, such as {@code java}. */
    String name();

    /** All devices, in the order of the system. Opening them is tried, so this takes a moment. */
    List<SoundDevice> devices();

    /**
     * Opens devices for playing, for recording, or for both at once. Nothing sounds yet.
     *
     * @throws SoundTroubleException if a device is not there, is busy, or does not take the format
     */
    SoundStream open(StreamRequest request);
}
