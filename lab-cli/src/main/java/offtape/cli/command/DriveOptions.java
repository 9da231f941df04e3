package offtape.cli.command;

import offtape.cli.transfer.Drive;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.ProgrammePlan;
import offtape.core.text.Sentences;
import offtape.report.result.LadderSession;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How hot stems are sent into the machine. */
final class DriveOptions {

    private static final Sentences SAID = Sentences.near(DriveOptions.class);

    private static final double MOST_DB = 60;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(
            names = "--drive",
            paramLabel = "DB",
            description =
                    "Raise each stem by so much before the machine and lower it by as much after it,"
                            + " -60 to 60 (default: 0).")
    private Double driveDb;

    @Option(
            names = "--k3",
            paramLabel = "PERCENT",
            converter = K3Converter.class,
            description =
                    "Raise or lower each stem so that its peak lies where the machine's K3 reaches this"
                            + " value, such as 1%%, by the session's ladder nearest to 1 kHz, on the"
                            + " channel that reaches it first.")
    private Double k3Percent;

    @Option(
            names = "--reference-level",
            paramLabel = "DBFS",
            description =
                    "Level of the reference tone of the session's programme, for a session that does"
                            + " not say it.")
    private Double referenceDbfs;

    /**
     * The level of the reference, dB re a full-scale sine; where nobody says it, that of programmes
     * for which nobody chose one.
     */
    double referenceDbfs(LadderSession session) {
        if (referenceDbfs != null && !(referenceDbfs >= -60 && referenceDbfs <= 0)) {
            throw new ParameterException(command.commandLine(), SAID.say("reference-range"));
        }
        return referenceDbfs != null
                ? referenceDbfs
                : session.referenceDbfs() != null
                        ? session.referenceDbfs()
                        : ProgrammePlan.DEFAULT_REFERENCE_DBFS;
    }

    /**
     * The drive.
     *
     * @throws UnusableInputException if the session does not tell what it takes
     */
    Drive drive(LadderSession session) {
        if (k3Percent == null) {
            return Drive.by(fixed());
        }
        if (driveDb != null) {
            throw new ParameterException(command.commandLine(), SAID.say("drive-or-k3"));
        }
        if (session.referenceDbfs() == null && referenceDbfs == null) {
            throw new UnusableInputException(SAID.say("no-reference-level", session.place()));
        }
        return Drive.peakAt(referenceDbfs(session) + session.levelAtK3(k3Percent));
    }

    private double fixed() {
        double db = driveDb == null ? 0 : driveDb;
        if (!(Math.abs(db) <= MOST_DB)) {
            throw new ParameterException(command.commandLine(), SAID.say("drive-range"));
        }
        return db;
    }
}
