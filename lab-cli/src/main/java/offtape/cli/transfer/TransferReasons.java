package offtape.cli.transfer;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundStream;
import offtape.core.align.Alignment;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;

/** Why a stem did not come back, or what to mind of it, in sentences. */
final class TransferReasons {

    private static final Sentences SAID = Sentences.near(TransferReasons.class);

    static final String LATE = SAID.say("late");

    static final String LOST = SAID.say("lost");

    /** Above this a sample that was played would be cut off. */
    private static final double FULL_SCALE = 1 + 1e-6;

    /** Clocks of sound devices that are not one seldom differ by more. */
    private static final double USUAL_PPM = 300;

    private static final double MOST_CHANGE_DB = 0.5;

    private TransferReasons() {}

    /** Why a peak may not be played, or null if it may. */
    static String tooLoud(double peak, double driveDb, LevelCeiling ceiling) {
        if (!ceiling.isExceededBy(peak) && peak <= FULL_SCALE) {
            return null;
        }
        double over = Decibels.ofAmplitude(peak) - ceiling.dbfs();
        return SAID.say(
                "too-loud",
                driveDb,
                Decibels.ofAmplitude(peak),
                ceiling.dbfs(),
                Math.floor((driveDb - over) * 10) / 10);
    }

    /** Why a stream has too few channels, or null if it has enough. */
    static String tooNarrow(int sent, int back, SoundStream stream) {
        return stream.outputs() < sent || stream.inputs() < back ? SAID.say("too-narrow") : null;
    }

    /** Nothing came back. */
    static String silent(double peak) {
        String what =
                peak == 0
                        ? SAID.say("digital-silence")
                        : SAID.say("only-noise", Decibels.ofAmplitude(peak));
        return what + " " + SAID.say("check-cables");
    }

    /** What to mind of a return, or null. */
    static String mind(
            boolean isClipped, StemReturn back, TransferSettings settings, Alignment found) {
        List<String> words = new ArrayList<>();
        if (isClipped) {
            words.add(SAID.say("input-full"));
        }
        if (back.isTooLoudFor24Bits() && !settings.isFloat()) {
            words.add(SAID.say("peaks-above"));
        }
        if (Math.abs(found.fastPpm()) > USUAL_PPM) {
            words.add(SAID.say("drifted"));
        }
        if (Math.abs(found.levelChangeDb()) > MOST_CHANGE_DB) {
            words.add(SAID.say("level-changed", found.levelChangeDb()));
        }
        return words.isEmpty() ? null : String.join(" ", words);
    }
}
