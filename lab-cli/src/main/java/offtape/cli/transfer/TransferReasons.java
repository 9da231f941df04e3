package offtape.cli.transfer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundStream;
import offtape.core.align.Alignment;
import offtape.core.unit.Decibels;

/** Why a stem did not come back, or what to mind of it, in sentences. */
final class TransferReasons {

    static final String LATE =
            "The computer was late while it played or recorded, twice. Use a longer --buffer or"
                    + " close other programs, and run again.";

    static final String LOST =
            "Sound was lost or put in on the way, twice: its marks came back at another distance than"
                    + " their own speed says. Use a longer --buffer or close other programs, and run"
                    + " again.";

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
        return String.format(
                Locale.ROOT,
                "It was not sent: with a drive of %.1f dB its peak would be %.1f dBFS, above the"
                        + " highest level of %.1f dBFS. A drive of %.1f dB would do; raise the"
                        + " machine's record level for the rest.",
                driveDb,
                Decibels.ofAmplitude(peak),
                ceiling.dbfs(),
                Math.floor((driveDb - over) * 10) / 10);
    }

    /** Why a stream has too few channels, or null if it has enough. */
    static String tooNarrow(int sent, int back, SoundStream stream) {
        return stream.outputs() < sent || stream.inputs() < back
                ? "It was not sent: it is stereo, and one channel only was named. Name two with"
                        + " --output-channels and --input-channels."
                : null;
    }

    /** Nothing came back. */
    static String silent(double peak) {
        String what =
                peak == 0
                        ? "Nothing but digital silence came in."
                        : String.format(
                                Locale.ROOT,
                                "Nothing but noise came in, at %.0f dBFS at most.",
                                Decibels.ofAmplitude(peak));
        return what
                + " Check the cables, that the machine is in record and its replay head is heard, and"
                + " the channels of the input.";
    }

    /** What to mind of a return, or null. */
    static String mind(
            boolean isClipped, StemReturn back, TransferSettings settings, Alignment found) {
        List<String> words = new ArrayList<>();
        if (isClipped) {
            words.add("The input reached full scale. Lower its gain and run again.");
        }
        if (back.isTooLoudFor24Bits() && !settings.isFloat()) {
            words.add(
                    "Its peaks came back above full scale, so it was written as 32-bit float, which"
                            + " holds them.");
        }
        if (Math.abs(found.fastPpm()) > USUAL_PPM) {
            words.add(
                    "It drifted by more than clocks do: a machine that is monitored off tape should"
                            + " not.");
        }
        if (Math.abs(found.levelChangeDb()) > MOST_CHANGE_DB) {
            words.add(
                    String.format(
                            Locale.ROOT,
                            "The level of the path changed by %+.1f dB meanwhile.",
                            found.levelChangeDb()));
        }
        return words.isEmpty() ? null : String.join(" ", words);
    }
}
