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
import offtape.core.text.Sentences;

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

    private static final Sentences SAID = Sentences.near(ErasureRun.class);

    private static final double TONE_HZ = 1000;
    private static final double TONE_S = 40;

    /** Long enough to cover the first half whenever the machine is started. */
    private static final double SILENCE_S = 20;

    private static final double REPLAY_S = 60;

    private static final CaptureNote NOTE =
            new CaptureNote("Replay of a tone that was recorded over", List.of());

    /** Leads through it; returns the exit code. */
    int record(Path out, boolean force) {
        devices.ceiling().check(peak, SAID.say("the-tone"), SAID.say("lower-level"));
        Speech speech = Speech.of(terminal);
        StopSignal stop = new StopSignal();
        try (Interrupt interrupt = Interrupt.guard();
                CaptureFile file = CaptureFile.begin(out, force)) {
            interrupt.first(stop::give);
            ask(speech.say("erasure.first"));
            if (!play(stop, peak, TONE_S)) {
                return ExitCodes.INTERRUPTED;
            }
            ask(speech.say("erasure.second"));
            if (!play(stop, 0, SILENCE_S)) {
                return ExitCodes.INTERRUPTED;
            }
            terminal.message(speech.say("erasure.stop"));
            ask(speech.say("erasure.third"));
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
            throw new UnusableInputException(SAID.say("erasure-alone"));
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
