package offtape.core.machine.spec;

import static offtape.core.machine.spec.Limits.copy;
import static offtape.core.machine.spec.Limits.orElse;
import static offtape.core.machine.spec.Limits.require;
import static offtape.core.machine.spec.Limits.within;

import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import java.nio.file.Path;
import java.util.List;
import offtape.core.text.Sentences;
import offtape.core.transport.CaptureMode;

/**
 * A simulated machine with its capture mode. Every member but {@code format} and {@code version}
 * may be absent; what is absent is perfect, so that the empty machine returns the programme as it
 * is. Members that are not known are refused.
 *
 * @param format always {@link #FORMAT}
 * @param version always {@link #VERSION}
 * @param name a name for people, or null
 * @param note a remark for people, or null
 * @param seed chooses the realisation of everything random; default 1
 * @param mode default {@link CaptureMode#REFERENCE_TAPE}
 * @param tapeSpeedMmPerS nominal tape speed, 10 to 1600 mm/s; default 190.5
 * @param hiss noise of the tape, or null for none
 * @param hum mains hum, or null for none
 * @param saturation how the tape saturates, or null for a tape that does not
 * @param dropouts damaged places, at most 1000
 * @param modulationNoise fluctuation of what is recorded, or null for none
 * @param replay which replay of the recording is heard, 1 to 1000, default 1; what lies on the tape
 *     is the same in all
 * @param bias bias of the recording; default as it was set
 * @param residue what remains of an earlier recording, or null for nothing
 * @param swapped whether left and right are exchanged between the machine and the recording;
 *     default false, and of no account in {@link CaptureMode#LOOPBACK}
 */
@JsonPropertyOrder({"format", "version"})
public record MachineSpec(
        String format,
        Integer version,
        String name,
        String note,
        Long seed,
        CaptureMode mode,
        Double tapeSpeedMmPerS,
        TransportSpec transport,
        HeadsSpec heads,
        SaturationSpec saturation,
        ElectronicsSpec electronics,
        CrosstalkSpec crosstalk,
        HissSpec hiss,
        HumSpec hum,
        List<DropoutSpec> dropouts,
        RecorderSpec recorder,
        ModulationNoiseSpec modulationNoise,
        Integer replay,
        BiasSpec bias,
        ResidueSpec residue,
        Boolean swapped) {

    private static final Sentences SAID = Sentences.near(MachineSpec.class);

    /** The value of {@code format}. */
    public static final String FORMAT = "offtape-machine";

    /** The only version there is. */
    public static final int VERSION = 1;

    /** The largest number of a replay. */
    public static final int MOST_REPLAYS = 1000;

    /** Checks the limits and fills in defaults. */
    public MachineSpec {
        require(FORMAT.equals(format), SAID.say("not-a-machine", FORMAT));
        require(version != null && version == VERSION, SAID.say("version", VERSION));
        seed = orElse(seed, 1L);
        mode = orElse(mode, CaptureMode.REFERENCE_TAPE);
        tapeSpeedMmPerS =
                within("tapeSpeedMmPerS", orElse(tapeSpeedMmPerS, 190.5), 10, 1600, "mm/s");
        transport = orElse(transport, TransportSpec.PERFECT);
        heads = orElse(heads, HeadsSpec.PERFECT);
        electronics = orElse(electronics, ElectronicsSpec.PERFECT);
        crosstalk = orElse(crosstalk, CrosstalkSpec.NONE);
        dropouts = copy("dropouts", dropouts, 1000);
        recorder = orElse(recorder, RecorderSpec.PERFECT);
        bias = orElse(bias, BiasSpec.AS_SET);
        swapped = orElse(swapped, false);
        replay = (int) within("replay", orElse(replay, 1), 1, MOST_REPLAYS, "");
    }

    /**
     * Reads a description; a motion file's relative path counts from the working directory.
     *
     * @param text JSON
     * @throws offtape.core.fault.UnusableInputException if it is malformed, has a member that is
     *     not known, or a value out of its limits; the message names the place
     */
    public static MachineSpec fromJson(String text) {
        return SpecJson.read(text, SAID.say("the-description"));
    }

    /**
     * Reads a description from a file; a motion file's relative path counts from that file.
     *
     * @throws offtape.core.fault.UnusableInputException if it cannot be read or used
     */
    public static MachineSpec fromJson(Path file) {
        return SpecJson.read(file);
    }

    /** The description as JSON, with defaults filled in, ending with a line feed. */
    public String toJson() {
        return SpecJson.write(this);
    }

    /** The same machine, heard in another mode. */
    public MachineSpec withMode(CaptureMode other) {
        return new MachineSpec(
                format,
                version,
                name,
                note,
                seed,
                other,
                tapeSpeedMmPerS,
                transport,
                heads,
                saturation,
                electronics,
                crosstalk,
                hiss,
                hum,
                dropouts,
                recorder,
                modulationNoise,
                replay,
                bias,
                residue,
                swapped);
    }

    /** The same machine that replays the same recording another time. */
    public MachineSpec withReplay(int other) {
        return new MachineSpec(
                format,
                version,
                name,
                note,
                seed,
                mode,
                tapeSpeedMmPerS,
                transport,
                heads,
                saturation,
                electronics,
                crosstalk,
                hiss,
                hum,
                dropouts,
                recorder,
                modulationNoise,
                other,
                bias,
                residue,
                swapped);
    }

    /** The same machine with another transport. */
    MachineSpec withTransport(TransportSpec other) {
        return new MachineSpec(
                format,
                version,
                name,
                note,
                seed,
                mode,
                tapeSpeedMmPerS,
                other,
                heads,
                saturation,
                electronics,
                crosstalk,
                hiss,
                hum,
                dropouts,
                recorder,
                modulationNoise,
                replay,
                bias,
                residue,
                swapped);
    }
}
