package offtape.cli.sound;

/**
 * What a stream is to be.
 *
 * @param output where to play, or null for recording alone
 * @param input where to record from, or null for playing alone
 * @param sampleRateHz frames a second, the same both ways
 * @param bufferSeconds how much sound the system may hold each way
 */
public record StreamRequest(End output, End input, int sampleRateHz, double bufferSeconds) {

    /** Holds half a second of hiccups at bay; shorter ones lose sound on a busy computer. */
    public static final double USUAL_BUFFER_S = 0.3;

    /**
     * One end of a stream.
     *
     * @param device name of the device, or null for the system's own choice
     * @param channels which of its channels
     */
    public record End(String device, ChannelPair channels) {}
}
