package offtape.report.apply.listen;

import java.util.Arrays;
import java.util.List;
import offtape.core.audio.AudioSource;
import offtape.core.fault.UnusableInputException;
import offtape.core.standard.ItuBs1770;
import offtape.core.text.Sentences;

/** What two sounds must be to be set against each other. */
final class ComparableSounds {

    private static final Sentences SAID = Sentences.near(ComparableSounds.class);

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
                        SAID.say("sound.channels", sound.name(), sound.channels()));
            }
            if (sound.sampleRateHz() < ItuBs1770.LOWEST_RATE_HZ) {
                throw new UnusableInputException(SAID.say("sound.low-rate", sound.name()));
            }
        }
        for (AudioSource sound : List.of(a, b)) {
            requireHeard(sound);
        }
        if (a.sampleRateHz() != b.sampleRateHz()) {
            throw new UnusableInputException(
                    SAID.say(
                            "sound.rates", a.name(), a.sampleRateHz(), b.name(), b.sampleRateHz()));
        }
    }

    private static void requireHeard(AudioSource sound) {
        double seconds = (double) sound.frames() / sound.sampleRateHz();
        if (seconds < ListenChoice.SHORTEST_SECONDS) {
            throw new UnusableInputException(SAID.say("sound.short", sound.name(), seconds));
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
        throw new UnusableInputException(SAID.say("sound.silent", sound.name()));
    }
}
