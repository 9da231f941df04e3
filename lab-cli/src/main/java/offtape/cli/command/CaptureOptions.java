package offtape.cli.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import offtape.cli.terminal.Terminal;
import offtape.core.output.Sha256;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.mode.Capture;
import offtape.report.result.LoopbackSession;
import offtape.report.result.Results;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a user says of how a return came about. */
final class CaptureOptions {

    private static final Sentences SAID = Sentences.near(CaptureOptions.class);

    @Option(
            names = "--mode",
            paramLabel = "MODE",
            converter = CaptureModeConverter.class,
            description =
                    "How the return came about: off-tape (three heads, recorded and replayed at the"
                            + " same moment), two-pass (recorded, rewound, replayed), reference-tape"
                            + " (a tape recorded elsewhere, only replayed) or loopback (no machine,"
                            + " the interface alone). Left out, it is taken from the recording where"
                            + " that shows it; otherwise you are asked.")
    private CaptureMode mode;

    @Option(
            names = "--head-spacing",
            paramLabel = "DISTANCE",
            converter = HeadSpacingConverter.class,
            description =
                    "Off-tape: distance from record to replay head along the tape, such as 32mm, if"
                            + " it is known and the recording was not started together with the"
                            + " programme.")
    private Double headSpacingMm;

    @Option(
            names = "--loopback",
            paramLabel = "SESSION",
            description =
                    "Folder of a session in which the interface measured itself (--mode loopback), with"
                            + " the same programme and sample rate. It is taken out of response,"
                            + " delay and noise; its distortion goes into the uncertainties.")
    private Path loopback;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** The mode that was said, or null. */
    CaptureMode mode() {
        return mode;
    }

    /**
     * What was said, and a way to ask for the rest.
     *
     * @param returns how many returns were given
     */
    Capture capture(Terminal terminal, int returns) {
        if (mode == CaptureMode.LOOPBACK && loopback != null) {
            throw new ParameterException(spec.commandLine(), SAID.say("loopback-of-loopback"));
        }
        if (returns > 1 && (mode == CaptureMode.OFF_TAPE || mode == CaptureMode.LOOPBACK)) {
            throw new ParameterException(
                    spec.commandLine(), SAID.say("several-returns", mode.key()));
        }
        return new Capture(
                mode,
                (possible, why) -> ask(terminal, possible, why),
                headSpacingMm,
                loopback == null ? null : KnownInterface.of(LoopbackSession.read(loopback)),
                returns);
    }

    /** Digest of the results of the loopback that is taken out, or null. */
    String loopbackSha256() {
        return loopback == null ? null : Sha256.ofFile(loopback.resolve(Results.FILE));
    }

    private static Optional<CaptureMode> ask(
            Terminal terminal, List<CaptureMode> possible, String why) {
        Speech speech = Speech.of(terminal);
        List<String> keys = possible.stream().map(CaptureMode::key).toList();
        return terminal.choice(speech.say("capture.how", speech.told(why)), keys)
                .map(CaptureMode::ofKey);
    }
}
