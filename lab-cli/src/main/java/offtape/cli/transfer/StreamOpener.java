package offtape.cli.transfer;

import offtape.cli.sound.SoundStream;

/** Opens the devices of a run. */
@FunctionalInterface
public interface StreamOpener {

    /**
     * Opens them at a rate, for playing and recording.
     *
     * @throws offtape.cli.sound.SoundTroubleException if they do not open
     */
    SoundStream open(int sampleRateHz);
}
