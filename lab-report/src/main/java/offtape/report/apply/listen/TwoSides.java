package offtape.report.apply.listen;

import offtape.core.audio.AudioSource;

/** A sound of one channel, heard on both sides. */
record TwoSides(AudioSource mono) implements AudioSource {

    @Override
    public int sampleRateHz() {
        return mono.sampleRateHz();
    }

    @Override
    public int channels() {
        return 2;
    }

    @Override
    public long frames() {
        return mono.frames();
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[] samples = mono.read(startFrame, count)[0];
        return new double[][] {samples, samples.clone()};
    }

    @Override
    public String name() {
        return mono.name();
    }

    @Override
    public void close() {
        mono.close();
    }
}
