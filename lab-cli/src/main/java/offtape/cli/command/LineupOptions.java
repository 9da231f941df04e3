package offtape.cli.command;

import java.nio.file.Path;
import offtape.cli.lineup.Desk;
import offtape.cli.lineup.View;
import offtape.cli.sound.LevelCeiling;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.CueSheet;
import offtape.core.programme.CueSheetJson;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammePlan;
import offtape.core.text.Sentences;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What a line-up begins with. */
final class LineupOptions {

    private static final Sentences SAID = Sentences.near(LineupOptions.class);

    private static final int USUAL_RATE_HZ = 48_000;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(
            names = "--reference-level",
            paramLabel = "DBFS",
            description =
                    "Level of the reference tone in dB under full scale (default: -18, or the"
                            + " programme's).")
    private Double referenceDbfs;

    @Option(
            names = "--programme",
            paramLabel = "DIR",
            description = "Take reference level and sample rate from this programme.")
    private Path programme;

    @Option(
            names = "--sample-rate",
            paramLabel = "HZ",
            description = "Sample rate, 44100 to 192000 (default: 48000, or the programme's).")
    private Integer sampleRateHz;

    @Option(
            names = "--frequency",
            paramLabel = "HZ",
            description = "Frequency of the tone, 20 to 20000 (default: 1000).")
    private double frequencyHz = 1000;

    @Option(
            names = "--level",
            paramLabel = "DB",
            description = "Level of the tone re the reference, -60 to 20 (default: 0).")
    private double levelDb;

    @Option(
            names = "--channels",
            paramLabel = "CHANNELS",
            description = "Where it is sent: both (the default), left or right.")
    private ChannelSet channels = ChannelSet.BOTH;

    @Option(
            names = "--aid",
            paramLabel = "AID",
            description =
                    "Begin with an aid for somebody who turns screws: azimuth, bias or replay (the"
                            + " level of a calibration tape).")
    private Aid aid;

    @Option(
            names = "--listen",
            description =
                    "Play nothing: a calibration tape is replayed. With --aid azimuth noise or a"
                            + " tone serves; otherwise its level tone is looked for.")
    private boolean listen;

    @Option(
            names = "--target-level",
            paramLabel = "DBFS",
            description =
                    "Level at which a calibration tape's tone is to come in (default: the reference"
                            + " level).")
    private Double targetDbfs;

    /** The aids by their names. */
    enum Aid {
        /** Delay between the channels. */
        AZIMUTH(View.AZIMUTH),
        /** Over-bias. */
        BIAS(View.BIAS),
        /** Level of a calibration tape. */
        REPLAY(View.TAPE);

        private final View view;

        Aid(View view) {
            this.view = view;
        }
    }

    /** Whether nothing is to be played from the beginning to the end. */
    boolean listens() {
        return listen || aid == Aid.REPLAY;
    }

    /** What is set at the beginning, and the sample rate that goes with it. */
    Start start(LevelCeiling ceiling) {
        CueSheet sheet =
                programme == null
                        ? null
                        : CueSheetJson.read(programme.resolve(ProgrammeFolder.SHEET));
        double reference = ProgrammePlan.DEFAULT_REFERENCE_DBFS;
        int rate = USUAL_RATE_HZ;
        if (sheet != null) {
            reference = sheet.referenceDbfs();
            rate = sheet.sampleRateHz();
        }
        if (referenceDbfs != null) {
            reference = referenceDbfs;
        }
        if (sampleRateHz != null) {
            rate = sampleRateHz;
        }
        check("--reference-level", reference, -60, 0, "dBFS");
        check("--sample-rate", rate, 44_100, 192_000, "Hz");
        check("--frequency", frequencyHz, 20, 20_000, "Hz");
        check("--level", levelDb, -60, 20, "dB");
        if (listens() && aid == Aid.BIAS) {
            throw usage(SAID.say("bias-listen"));
        }
        double target = targetDbfs == null ? reference : targetDbfs;
        check("--target-level", target, -60, 0, "dBFS");
        Desk.Limits limits = new Desk.Limits(reference, ceiling, target, listens());
        return new Start(Desk.begin(limits, view(), frequencyHz, levelDb, channels), rate);
    }

    /**
     * The beginning.
     *
     * @param desk what is set
     * @param sampleRateHz frames a second
     */
    record Start(Desk desk, int sampleRateHz) {}

    private View view() {
        if (aid == null) {
            return listen ? View.TAPE : View.GAINS;
        }
        return aid.view;
    }

    private void check(String option, double value, double low, double high, String unit) {
        if (!(value >= low && value <= high)) {
            throw usage(SAID.say("option-range", option, low, high, unit));
        }
    }

    private ParameterException usage(String sentence) {
        return new ParameterException(command.commandLine(), sentence);
    }
}
