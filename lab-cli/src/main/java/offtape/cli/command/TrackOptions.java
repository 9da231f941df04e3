package offtape.cli.command;

import offtape.core.standard.TrackSpacing;
import offtape.core.text.Sentences;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How far the two tracks of the tape lie apart. */
final class TrackOptions {

    private static final Sentences SAID = Sentences.near(TrackOptions.class);

    @Option(
            names = "--track-format",
            paramLabel = "NAME",
            converter = TrackFormatConverter.class,
            completionCandidates = TrackFormatConverter.Names.class,
            description =
                    "How the tape is laid out, for the azimuth in arc minutes: two-track, butterfly or"
                            + " quarter-track (quarter-inch reels; tracks 4.0, 3.5 and 3.4 mm apart) or"
                            + " cassette (0.9 mm).")
    private TrackSpacing trackFormat;

    @Option(
            names = "--track-spacing",
            paramLabel = "DISTANCE",
            converter = TrackSpacingConverter.class,
            description =
                    "Instead: the distance between the middles of the two tracks, such as 4.0mm.")
    private TrackSpacing trackSpacing;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    /** How far the tracks lie apart, or null. */
    TrackSpacing tracks() {
        if (trackFormat != null && trackSpacing != null) {
            throw new ParameterException(spec.commandLine(), SAID.say("track-either"));
        }
        return trackFormat != null ? trackFormat : trackSpacing;
    }
}
