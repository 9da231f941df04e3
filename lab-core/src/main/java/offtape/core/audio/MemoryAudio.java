package offtape.core.audio;

/** Sound held in memory. The arrays given are used as they are and must not be changed later. */
public final class MemoryAudio implements AudioSource {

    private final String name;
    private final int sampleRateHz;
    private final double[][] samples;

    /**
     * Wraps samples in full-scale units.
     *
     * @param name short name for messages
     * @param sampleRateHz frames per second
     * @param samples one array a channel, all of one length, at least one channel
     * @throws IllegalArgumentException if there is no channel or the lengths differ
     */
    public MemoryAudio(String name, int sampleRateHz, double[]... samples) {
        if (samples.length == 0) {
            throw new IllegalArgumentException("at least one channel is needed");
        }
        for (double[] channel : samples) {
            if (channel.length != samples[0].length) {
                throw new IllegalArgumentException("channels differ in length");
            }
        }
        this.name = name;
        this.sampleRateHz = sampleRateHz;
        this.samples = samples.clone();
    }

    @Override
    public int sampleRateHz() {
        return sampleRateHz;
    }

    @Override
    public int channels() {
        return samples.length;
    }

    @Override
    public long frames() {
        return samples[0].length;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] out = new double[samples.length][count];
        long from = Math.max(0, startFrame);
        long to = Math.min(frames(), startFrame + count);
        for (int c = 0; c < samples.length && from < to; c++) {
            System.arraycopy(
                    samples[c], (int) from, out[c], (int) (from - startFrame), (int) (to - from));
        }
        return out;
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public void close() {
        // nothing is held open
    }
}
