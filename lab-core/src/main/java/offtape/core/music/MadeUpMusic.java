package offtape.core.music;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.random.Draw;

/**
 * A piece of music made by rule, two channels, any length: pitches, strengths and times are drawn
 * by a seed, so that no bar is like another and every run is like the last. Peaks lie near −6 dBFS
 * and stay below full scale. Any stretch is made alone, so length costs no memory.
 */
public final class MadeUpMusic implements AudioSource {

    private final Kind kind;
    private final int sampleRateHz;
    private final long frames;
    private final Draw draw;

    private MadeUpMusic(Kind kind, int sampleRateHz, long frames, Draw draw) {
        this.kind = kind;
        this.sampleRateHz = sampleRateHz;
        this.frames = frames;
        this.draw = draw;
    }

    /** Who plays. */
    public enum Kind {
        /** Kick, snare and cymbals. */
        DRUMS(1.4, List.of(new DrumPart())),
        /** A plucked bass. */
        BASS(1.3, List.of(new BassPart())),
        /** A voice that sings vowels, with pauses. */
        VOICE(1.4, List.of(new VoicePart())),
        /** All of these, with chords. */
        MIX(0.7, List.of(new DrumPart(), new BassPart(), new VoicePart(), new ChordPart()));

        private final double gain;
        private final List<Part> parts;

        Kind(double gain, List<Part> parts) {
            this.gain = gain;
            this.parts = parts;
        }
    }

    /**
     * A piece.
     *
     * @param kind who plays
     * @param sampleRateHz frames a second; the notes need 40 kHz or more to be without images
     * @param seconds length, rounded to frames
     * @param seed which piece
     */
    public static MadeUpMusic of(Kind kind, int sampleRateHz, double seconds, long seed) {
        long frames = Math.round(seconds * sampleRateHz);
        return new MadeUpMusic(kind, sampleRateHz, frames, new Draw(seed));
    }

    @Override
    public int sampleRateHz() {
        return sampleRateHz;
    }

    @Override
    public int channels() {
        return 2;
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public double[][] read(long startFrame, int count) {
        double[][] block = new double[2][count];
        double from = (double) startFrame / sampleRateHz;
        double to = (double) (startFrame + count) / sampleRateHz;
        long first = Math.max(0, (long) Math.floor(from / Part.BAR_SECONDS) - 1);
        for (long bar = first; bar * Part.BAR_SECONDS < to; bar++) {
            for (int p = 0; p < kind.parts.size(); p++) {
                Draw chance = draw.of(p).of(bar);
                for (Sounding sounding : kind.parts.get(p).bar(bar, chance)) {
                    sounding.add(block, startFrame, sampleRateHz);
                }
            }
        }
        finish(block, startFrame);
        return block;
    }

    private void finish(double[][] block, long startFrame) {
        for (double[] channel : block) {
            for (int i = 0; i < channel.length; i++) {
                boolean isInside = startFrame + i >= 0 && startFrame + i < frames;
                channel[i] = isInside ? kind.gain * channel[i] : 0;
            }
        }
    }

    @Override
    public String name() {
        return "made-up music";
    }

    @Override
    public void close() {
        // nothing is held
    }
}
