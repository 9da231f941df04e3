package offtape.cli.lineup;

import java.util.List;

/**
 * How everything stands. Lists have one entry a channel that is recorded, and are empty where
 * nothing has been read yet.
 *
 * @param stage what is going on
 * @param started whether readings of what is sent have been seen
 * @param desk what is set
 * @param tones the tone as it returns
 * @param tapeHz frequency of a calibration tape's tone, or null
 * @param pair how the channels lie in time, or null
 * @param azimuth how that moves
 * @param bias the return while the bias is turned
 * @param noise without a tone
 * @param delay by marks
 * @param peaks of the last moment
 * @param late how often the computer was late so far, as far as the system tells
 */
public record Readings(
        Stage stage,
        boolean started,
        Desk desk,
        List<ToneReading> tones,
        Double tapeHz,
        PairReading pair,
        AzimuthTrack azimuth,
        List<BiasTrack> bias,
        List<NoiseReading> noise,
        Delay delay,
        List<Peak> peaks,
        long late) {

    /** Copies the lists. */
    public Readings {
        tones = List.copyOf(tones);
        bias = List.copyOf(bias);
        noise = List.copyOf(noise);
        peaks = List.copyOf(peaks);
    }

    /** Level of right against left, or null unless a tone comes back on both. */
    public Double rightLessLeftDb() {
        boolean both = tones.size() == 2 && tones.stream().allMatch(ToneReading::isTone);
        return both ? (Double) (tones.get(1).levelDbfs() - tones.get(0).levelDbfs()) : null;
    }
}
