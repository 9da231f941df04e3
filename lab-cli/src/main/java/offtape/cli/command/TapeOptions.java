package offtape.cli.command;

import java.nio.file.Path;
import offtape.core.standard.TimeConstants;
import offtape.core.tape.ToneList;
import offtape.core.text.Sentences;
import offtape.core.unit.TapeSpeed;
import offtape.report.measure.tape.TapeQuestion;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a user says of a calibration tape and of the machine that replays it. */
final class TapeOptions {

    private static final Sentences SAID = Sentences.near(TapeOptions.class);

    private static final double LOWEST_HZ = 300;
    private static final double HIGHEST_HZ = 12_000;

    @Option(
            names = "--tones",
            paramLabel = "LIST",
            description =
                    "The tones of the tape as a JSON file (default: they are held against the usual"
                            + " series of frequencies); --list-template writes a form.")
    private Path tones;

    @Option(
            names = {"--speed-tone", "--frequency"},
            paramLabel = "HZ",
            description =
                    "What the tape's tone for speed should have, 300 to 12000 Hz, such as 3150"
                            + " (default: by the list or the series).")
    private Double speedToneHz;

    @Option(
            names = "--equalisation",
            paramLabel = "CONSTANTS",
            converter = TimeConstantsConverter.class,
            description =
                    "Time constants the tape was recorded to, µs, low one first: 3180,50 or none,70"
                            + " (default: what stands in the list).")
    private TimeConstants equalisation;

    @Option(
            names = "--machine-equalisation",
            paramLabel = "CONSTANTS",
            converter = TimeConstantsConverter.class,
            description =
                    "Time constants the machine's replay is set to, if they are others; the response is"
                            + " then given corrected as well.")
    private TimeConstants machineEqualisation;

    @Option(
            names = "--tape-speed",
            paramLabel = "SPEED",
            converter = TapeSpeedConverter.class,
            description =
                    "Nominal tape speed, for the azimuth, such as 19.05cm/s or 7.5ips (default: what"
                            + " stands in the list).")
    private TapeSpeed tapeSpeed;

    @Mixin private TrackOptions tracks;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** All of it, checked. */
    TapeQuestion question() {
        if (speedToneHz != null && !(speedToneHz >= LOWEST_HZ && speedToneHz <= HIGHEST_HZ)) {
            throw new ParameterException(spec.commandLine(), SAID.say("speed-tone-range"));
        }
        return new TapeQuestion(
                tones == null ? null : ToneList.fromJson(tones),
                speedToneHz,
                equalisation,
                machineEqualisation,
                tapeSpeed == null ? null : (Double) tapeSpeed.mmPerS(),
                tracks.tracks());
    }
}
