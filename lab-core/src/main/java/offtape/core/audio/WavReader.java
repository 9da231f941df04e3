package offtape.core.audio;

import offtape.core.fault.UnusableInputException;

/**
 * Reads the header of a WAV file: RIFF, RF64 (EBU Tech 3306) or BW64 (ITU-R BS.2088) with linear
 * PCM of 8 to 32 bits or IEEE float of 32 or 64 bits, plain or in the extensible form.
 */
final class WavReader {

    private WavReader() {}

    /**
     * Reads the header.
     *
     * @throws UnusableInputException if the sound is not to be found or is coded in another way
     */
    static AudioFile read(FileBytes file) {
        WavScan.Found found = WavScan.scan(file);
        return AudioFile.in(
                file, found.sound(), FormatChunk.read(file, found.format()), found.note());
    }
}
