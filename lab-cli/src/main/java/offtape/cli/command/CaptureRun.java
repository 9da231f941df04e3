package offtape.cli.command;

import java.nio.file.Path;
import java.util.function.IntFunction;
import offtape.cli.capture.Capture;
import offtape.cli.capture.CaptureResult;
import offtape.cli.capture.PlayList;
import offtape.cli.capture.StopSignal;
import offtape.cli.sound.LevelCeiling;
import offtape.cli.sound.SoundStream;
import offtape.cli.terminal.ExitCodes;
import offtape.cli.terminal.Interrupt;
import offtape.cli.terminal.Terminal;
import offtape.core.programme.Programme;

/**
 * One capture with its words, which Ctrl-C silences at once.
 *
 * @param tailSeconds how long it goes on after the programme's length
 * @param ceiling the highest level that may be played
 * @param devices opens them at a sample rate
 */
record CaptureRun(
        Terminal terminal,
        CapturePass pass,
        double tailSeconds,
        LevelCeiling ceiling,
        CaptureNote note,
        IntFunction<SoundStream> devices) {

    /** Records, and plays if the pass does; returns the exit code. */
    int recorded(Programme sound, Path out, boolean force) {
        StopSignal stop = new StopSignal();
        CaptureWords words = new CaptureWords(terminal);
        // opened first and so closed last, when all is in order
        try (Interrupt interrupt = Interrupt.guard();
                CaptureFile file = CaptureFile.begin(out, force);
                SoundStream stream = devices.apply(sound.sheet().sampleRateHz())) {
            interrupt.first(stop::give);
            Capture capture = new Capture(stream, stop, words::progress);
            if (!pass.plays()) {
                terminal.message(Speech.of(terminal).say("capture.start-tape"));
            }
            double seconds = sound.sheet().seconds(sound.sheet().frames()) + tailSeconds;
            CaptureResult result =
                    file.record(
                            stream,
                            note,
                            wav ->
                                    pass.plays()
                                            ? capture.run(list(sound), wav)
                                            : capture.record(seconds, wav));
            words.recorded(result, file.place()).forEach(terminal::message);
            return code(result);
        }
    }

    /** Plays only; returns the exit code. */
    int played(Programme sound) {
        StopSignal stop = new StopSignal();
        CaptureWords words = new CaptureWords(terminal);
        try (Interrupt interrupt = Interrupt.guard();
                SoundStream stream = devices.apply(sound.sheet().sampleRateHz())) {
            interrupt.first(stop::give);
            terminal.message(Speech.of(terminal).say("capture.begins-in", pass.leadSeconds()));
            CaptureResult result = new Capture(stream, stop, words::progress).play(list(sound));
            words.played(result).forEach(terminal::message);
            return code(result);
        }
    }

    private PlayList list(Programme sound) {
        return new PlayList(sound.audio(), 1, pass.leadSeconds(), tailSeconds, ceiling);
    }

    private static int code(CaptureResult result) {
        return result.complete() ? ExitCodes.DONE : ExitCodes.INTERRUPTED;
    }
}
