package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import offtape.cli.capture.Capture;
import offtape.cli.capture.CaptureResult;
import offtape.cli.capture.PlayList;
import offtape.cli.capture.StopSignal;
import offtape.cli.capture.ToneSound;
import offtape.cli.sound.SoundLayers;
import offtape.cli.sound.SoundStream;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Interrupt;
import offtape.cli.terminal.Terminal;
import offtape.core.fault.UnusableInputException;

/**
 * The three passes of an erasing check, each begun by the person at the machine.
 *
 * @param peak of the tone, full-scale units
 */
record ErasureRun(
        Terminal terminal,
        DeviceOptions devices,
        SoundLayers layers,
        int sampleRateHz,
        double peak) {

    private static final double TONE_HZ = 1000;
    private static final double TONE_S = 40;

    /** Long enough to cover the first half whenever the machine is started. */
    private static final double SILENCE_S = 20;

    private static final double REPLAY_S = 60;

    private static final CaptureNote NOTE =
            new CaptureNote("Replay of a tone that was recorded over", List.of());

    /** Leads through it; returns the exit code. */
    int record(Path out, boolean force) {
        devices.ceiling().check(peak, "The tone", "Give a lower --level.");
        StopSignal stop = new StopSignal();
        try (Interrupt interrupt = Interrupt.guard();
                CaptureFile file = CaptureFile.begin(out, force)) {
            interrupt.first(stop::give);
            ask(
                    "1 of 3: set the counter to 0 on a stretch of tape that may be overwritten and"
                            + " start recording. 1 kHz is played for 40 s.");
            if (!play(stop, peak, TONE_S)) {
                return ExitCodes.INTERRUPTED;
            }
            ask(
                    "2 of 3: rewind to 0 and start recording again: nothing is played for 20 s. Stop"
                            + " the machine when I say so.");
            if (!play(stop, 0, SILENCE_S)) {
                return ExitCodes.INTERRUPTED;
            }
            terminal.message("Stop the machine now.");
            ask("3 of 3: rewind to 0 and start replaying. 60 s are recorded.");
            CaptureWords words = new CaptureWords(terminal);
            try (SoundStream stream = devices.open(layers, sampleRateHz, false, true)) {
                Capture capture = new Capture(stream, stop, words::progress);
                CaptureResult result =
                        file.record(stream, NOTE, wav -> capture.record(REPLAY_S, wav));
                words.recorded(result, file.place()).forEach(terminal::message);
                return result.complete() ? ExitCodes.DONE : ExitCodes.INTERRUPTED;
            }
        }
    }

    private void ask(String what) {
        if (!terminal.ready(what)) {
            throw new UnusableInputException(
                    "This check leads through three steps and needs somebody at a terminal. Make the"
                            + " recordings by hand and give the replay with --recording.");
        }
    }

    private boolean play(StopSignal stop, double level, double seconds) {
        CaptureWords words = new CaptureWords(terminal);
        try (SoundStream stream = devices.open(layers, sampleRateHz, true, false)) {
            ToneSound sound =
                    new ToneSound(TONE_HZ, level, sampleRateHz, Math.round(seconds * sampleRateHz));
            PlayList list = new PlayList(sound, 1, 1, 0.5, devices.ceiling());
            CaptureResult result = new Capture(stream, stop, words::progress).play(list);
            words.troubles(result).forEach(terminal::message);
            return result.complete();
        }
    }
}
