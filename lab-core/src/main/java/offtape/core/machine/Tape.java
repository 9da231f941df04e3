package offtape.core.machine;

import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.machine.spec.LeadInSpec;
import offtape.core.machine.spec.ResidueSpec;

/**
 * Two tracks, written as far as they are asked for: the record side of both channels. Places are
 * counted in samples at twice the programme's rate, 0 at its first frame.
 */
final class Tape {

    /** Samples of a track a frame of the programme. */
    static final int OVERSAMPLING = 2;

    // Filters of the contour settle in this time ahead of the first place that is read.
    private static final double SETTLING_SECONDS = 1;

    private final ProgrammeReader reader;
    private final Track[] tracks;

    /**
     * A tape to be read from a programme frame on.
     *
     * @param chains the channels' chains, left and right
     * @param fluctuations the channels' modulation noise, null entries for none
     * @param residue what remains of an earlier recording, or null
     */
    Tape(
            AudioSource audio,
            LeadInSpec leadIn,
            double referencePeak,
            List<ChannelChain> chains,
            LevelFluctuation[] fluctuations,
            ResidueSpec residue,
            double firstFrame) {
        int rateHz = audio.sampleRateHz();
        BlockGeometry blocks = BlockGeometry.at(rateHz);
        long start =
                (long) Math.floor(firstFrame - SETTLING_SECONDS * rateHz) - 4L * blocks.reach();
        reader = new ProgrammeReader(audio, leadIn, referencePeak, start, blocks.chunk());
        tracks = new Track[chains.size()];
        for (int c = 0; c < tracks.length; c++) {
            ChannelChain chain = chains.get(c);
            int lag = chain.magnetisation() == null ? 0 : blocks.reach();
            Residue under = Residue.of(residue, audio, c, chain.recordGain(), start - lag);
            tracks[c] = new Track(chain, fluctuations[c], under, blocks, start);
        }
    }

    /** Writes on until both tracks can be read up to a place, and forgets what lies before. */
    void write(double fromPlace, double toPlace) {
        long keep = (long) Math.floor(fromPlace) - Interpolator.HALF - 1;
        while (end() < toPlace + Interpolator.HALF + 2) {
            double[][] chunk = reader.next();
            for (int c = 0; c < tracks.length; c++) {
                tracks[c].append(chunk[c], keep);
            }
        }
    }

    // A track with a curve lags behind one without.
    private long end() {
        long end = Long.MAX_VALUE;
        for (Track track : tracks) {
            end = Math.min(end, track.track.end());
        }
        return end;
    }

    /** A track at a place between its samples. */
    double read(int channel, double place) {
        return tracks[channel].track.at(place);
    }

    /** The record side of one channel. */
    private static final class Track {

        private final double gain;
        private final Magnetisation.Running magnetisation;
        private final LevelFluctuation fluctuation;
        private final Residue residue;
        private long next;
        private final List<Section.Running> contour;
        private final Upsampler losses;
        private final TapeTrack track;

        private Track(
                ChannelChain chain,
                LevelFluctuation fluctuation,
                Residue residue,
                BlockGeometry blocks,
                long start) {
            this.fluctuation = fluctuation;
            this.residue = residue;
            next = start;
            gain = chain.recordGain();
            magnetisation =
                    chain.magnetisation() == null ? null : chain.magnetisation().start(blocks);
            contour = Sections.start(chain.contour());
            losses = new Upsampler(blocks, OVERSAMPLING, chain.kernel());
            int lag = blocks.reach() * (magnetisation == null ? 1 : 2);
            track = new TapeTrack(OVERSAMPLING * (start - lag));
        }

        private void append(double[] chunk, long keep) {
            for (int i = 0; i < chunk.length; i++) {
                chunk[i] *= gain;
            }
            double[] written = magnetisation == null ? chunk : magnetisation.next(chunk);
            if (fluctuation != null) {
                fluctuation.apply(written, next);
                next += written.length;
            }
            if (residue != null) {
                residue.add(written);
            }
            contour.forEach(section -> section.run(written, written.length));
            track.append(losses.next(written), keep);
        }
    }
}
