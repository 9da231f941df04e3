package offtape.report.apply.listen;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import offtape.core.audio.AudioSource;
import offtape.core.audio.MemoryAudio;
import offtape.core.fault.UnusableInputException;
import org.junit.jupiter.api.Test;

/** What cannot be listened to is refused in words that say what to do. */
class ListenRefusalTest {

    private static final AudioSource MUSIC = Sounds.stereo("music.wav", Sounds.music(1));

    private static void refused(
            AudioSource a, AudioSource b, ListenChoice choice, String... words) {
        String message =
                assertThrows(
                                UnusableInputException.class,
                                () -> Listening.of(a, b, choice, Sounds.NONE))
                        .getMessage();
        for (String word : words) {
            assertTrue(message.contains(word), message);
        }
    }

    @Test
    void unusableSoundsAreRefused() {
        ListenChoice plain = Sounds.choice(false, false);
        AudioSource silent = Sounds.stereo("silent.wav", new double[2][48_000]);
        refused(MUSIC, silent, plain, "silent.wav is silent from end to end");
        AudioSource brief = Sounds.stereo("brief.wav", Sounds.music(0.3));
        refused(MUSIC, brief, plain, "brief.wav lasts 0.30 s", "0.4 s");
        AudioSource quiet = Sounds.stereo("quiet.wav", Sounds.moved(Sounds.music(1), 0, 1e-4));
        refused(MUSIC, quiet, plain, "quiet.wav is silent", "in the part", "--from");
        AudioSource slow = new MemoryAudio("slow.wav", 44_100, Sounds.music(1)[0]);
        refused(MUSIC, slow, plain, "44100", "48000", "Convert");
        AudioSource many = new MemoryAudio("many.wav", 48_000, new double[4][48_000]);
        refused(many, MUSIC, plain, "many.wav has 4 channels", "stereo");
        AudioSource low = new MemoryAudio("low.wav", 4000, Sounds.music(1)[0]);
        refused(low, low, plain, "8000", "Convert");
    }

    @Test
    void partsOutsideAreRefused() {
        refused(MUSIC, MUSIC, Sounds.part(0.8, 1), "0.80 s", "0.00 to 1.00 s", "--from");
    }

    @Test
    void pagesThatWouldBeTooLargeAreRefused() {
        double[][] samples = new double[2][80 * 192_000];
        samples[0][0] = 1;
        AudioSource huge = new MemoryAudio("huge.wav", 192_000, samples);
        refused(huge, huge, Sounds.part(0, 80), "100 MB", "--length 32");
    }
}
