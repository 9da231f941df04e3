package offtape.cli.sound.portaudio;

import java.nio.ByteBuffer;

/**
 * The functions of PortAudio that are used. The library may be called by one thread at a time only,
 * and a stream by the thread that opened it. Numbers below 0 are its error codes.
 */
interface PortAudioApi {

    /** Recorded sound was lost; what was asked for came nevertheless. */
    int INPUT_OVERFLOWED = -9981;

    /** Sound to play ran out; what was handed over was taken nevertheless. */
    int OUTPUT_UNDERFLOWED = -9980;

    /** Output and input cannot run as one stream. */
    int BAD_DEVICE_COMBINATION = -9993;

    /** The device is in use, or went away. */
    int DEVICE_UNAVAILABLE = -9985;

    /**
     * A device.
     *
     * @param name as its host interface calls it
     * @param hostApi number of its host interface
     * @param inputs most channels it records
     * @param outputs most channels it plays
     * @param sampleRateHz its usual rate
     */
    record Device(String name, int hostApi, int inputs, int outputs, double sampleRateHz) {}

    /**
     * A host interface: one of the system's ways to its devices.
     *
     * @param type PortAudio's number for its kind
     * @param name such as ALSA
     * @param defaultInput number of its usual device for recording, or below 0
     * @param defaultOutput number of its usual device for playing, or below 0
     */
    record HostApi(int type, String name, int defaultInput, int defaultOutput) {}

    /**
     * One direction of a stream.
     *
     * @param device number of the device
     * @param channels how many of its channels are opened, from the first
     * @param latencySeconds how much sound the host holds
     */
    record Side(int device, int channels, double latencySeconds) {}

    /**
     * What came of opening a stream.
     *
     * @param code 0, or an error code
     * @param stream the stream, if it is 0
     */
    record Opened(int code, long stream) {}

    /** Finds the devices that there are; to be undone by {@link #terminate} if it went well. */
    int initialize();

    /** Undoes {@link #initialize}. */
    void terminate();

    /** How many devices there are. */
    int deviceCount();

    /** A device by its number. */
    Device device(int number);

    /** A host interface by its number. */
    HostApi hostApi(int number);

    /** Number of the usual host interface. */
    int defaultHostApi();

    /** Whether a format would open, 0 if it would; either side may be null. */
    int isFormatSupported(Side input, Side output, double sampleRateHz);

    /** Opens for both directions or one; either side may be null. */
    Opened open(Side input, Side output, double sampleRateHz);

    /** Begins. */
    int start(long stream);

    /** Falls silent at once, without playing what was handed over. */
    int abort(long stream);

    /** Lets it go. */
    int close(long stream);

    /** How much of the output's sound the system holds, s. */
    double outputLatencySeconds(long stream);

    /** How many frames can be read without waiting. */
    int readable(long stream);

    /** How many frames can be written without waiting. */
    int writable(long stream);

    /** Waits for frames of 32-bit floats. */
    int read(long stream, ByteBuffer block, int frames);

    /** Hands over frames of 32-bit integers, waiting until there is room. */
    int write(long stream, ByteBuffer block, int frames);

    /** What an error code means, in English. */
    String errorText(int code);
}
