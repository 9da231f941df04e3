package offtape.report.apply.listen;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.ItuBs1770;

/** What two sounds must be to be set against each other. */
final class ComparableSounds {

    /** Peaks of −100 dBFS are no sound: less than most converters' own noise. */
    private static final double SILENT = 1e-5;

    private ComparableSounds() {}

    /**
     * Checks rates, channels, lengths, and that there is sound.
     *
     * @throws UnusableInputException in words, if they cannot be compared
     */
    static void require(AudioSource a, AudioSource b) {
        for (AudioSource sound : List.of(a, b)) {
            if (sound.channels() > 2) {
                throw new UnusableInputException(
                        sound.name()
                                + " has "
                                + sound.channels()
                                + " channels, and one or two can be listened to. Export the pair that"
                                + " you mean as a stereo file.");
            }
            if (sound.sampleRateHz() < ItuBs1770.LOWEST_RATE_HZ) {
                throw new UnusableInputException(
                        sound.name()
                                + " has fewer than 8000 frames a second, for which loudness is not"
                                + " defined. Convert both files to 44100 Hz or more.");
            }
        }
        for (AudioSource sound : List.of(a, b)) {
            requireHeard(sound);
        }
        if (a.sampleRateHz() != b.sampleRateHz()) {
            throw new UnusableInputException(
                    a.name()
                            + " has "
                            + a.sampleRateHz()
                            + " frames a second and "
                            + b.name()
                            + " has "
                            + b.sampleRateHz()
                            + ". Convert one of them in your workstation, with its best quality, so"
                            + " that both have the same rate.");
        }
    }

    private static void requireHeard(AudioSource sound) {
        double seconds = (double) sound.frames() / sound.sampleRateHz();
        if (seconds < ListenChoice.SHORTEST_SECONDS) {
            throw new UnusableInputException(
                    String.format(
                            Locale.ROOT,
                            "%s lasts %.2f s, and 0.4 s are the least that has a loudness. Name a"
                                    + " longer recording.",
                            sound.name(),
                            seconds));
        }
        int block = sound.sampleRateHz();
        for (long at = 0; at < sound.frames(); at += block) {
            int count = (int) Math.min(block, sound.frames() - at);
            if (Arrays.stream(sound.read(at, count))
                    .flatMapToDouble(Arrays::stream)
                    .anyMatch(x -> Math.abs(x) > SILENT)) {
                return;
            }
        }
        throw new UnusableInputException(
                sound.name()
                        + " is silent from end to end. Check that the file is the right one and that"
                        + " the machine's replay was recorded.");
    }
}
