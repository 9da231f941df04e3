package offtape.cli.command;

import java.nio.file.Path;
import offtape.core.transport.TransportDescription;
import offtape.core.unit.TapeSpeed;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a user says of a session that is written. */
final class SessionOptions {

    /** What the file with the dimensions is for. */
    static final String TRANSPORT_HELP =
            "Dimensions of the transport, so that lines of wow and flutter get the name of the part"
                    + " that makes them; \"offtape prepare --transport-template FILE\" writes a form"
                    + " for them.";

    @Option(
            names = "--machine-name",
            paramLabel = "TEXT",
            description = "The machine, as you call it; stands on top of the report.")
    private String machineName;

    @Option(names = "--tape", paramLabel = "TEXT", description = "The tape, as you call it.")
    private String tape;

    @Option(names = "--note", paramLabel = "TEXT", description = "A remark of your own.")
    private String note;

    @Option(
            names = "--tape-speed",
            paramLabel = "SPEED",
            converter = TapeSpeedConverter.class,
            description =
                    "Nominal tape speed, such as 19.05cm/s or 7.5ips (default: what the programme was"
                            + " made for).")
    private TapeSpeed tapeSpeed;

    @Option(names = "--transport", paramLabel = "FILE", description = TRANSPORT_HELP)
    private Path transport;

    @Mixin private TrackOptions tracks;

    /**
     * All of it, with the dimensions read.
     *
     * @throws offtape.core.fault.UnusableInputException if their file cannot be used
     */
    SessionSaid said() {
        return new SessionSaid(
                machineName,
                tape,
                note,
                tapeSpeed == null ? null : (Double) tapeSpeed.mmPerS(),
                tracks.tracks(),
                transport == null ? null : TransportDescription.fromJson(transport));
    }
}
