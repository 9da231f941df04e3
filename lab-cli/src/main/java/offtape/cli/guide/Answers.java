package offtape.cli.guide;

import java.nio.file.Path;
import java.util.List;

/**
 * What was said and done so far.
 *
 * @param folder everything goes here
 * @param machineName as the user calls it
 * @param heads what it can do at once
 * @param tapeSpeed such as {@code 19.05cm/s}
 * @param brief whether the short programme is used
 * @param devices options that name the sound devices
 * @param loopback session of the interface alone, or null
 * @param recording the return, or null
 * @param session what was measured, or null
 */
record Answers(
        Path folder,
        String machineName,
        Heads heads,
        String tapeSpeed,
        boolean brief,
        List<String> devices,
        Path loopback,
        Path recording,
        Path session) {

    Answers {
        devices = List.copyOf(devices);
    }

    /** Nothing said yet. */
    static Answers in(Path folder) {
        return new Answers(
                folder, "", Heads.THREE, "19.05cm/s", false, List.of(), null, null, null);
    }

    /** With another machine, of which nothing is recorded yet. */
    Answers withMachine(String name, Heads what, String speed, boolean isBrief) {
        return new Answers(folder, name, what, speed, isBrief, devices, null, null, null);
    }

    /** With other devices, of which nothing is known yet. */
    Answers withDevices(List<String> options) {
        return new Answers(
                folder, machineName, heads, tapeSpeed, brief, options, null, recording, session);
    }

    /** With the interface measured. */
    Answers withLoopback(Path measured) {
        return new Answers(
                folder,
                machineName,
                heads,
                tapeSpeed,
                brief,
                devices,
                measured,
                recording,
                session);
    }

    /** With a return, which is not measured yet. */
    Answers withRecording(Path wav) {
        return new Answers(
                folder, machineName, heads, tapeSpeed, brief, devices, loopback, wav, null);
    }

    /** With the return measured. */
    Answers withSession(Path measured) {
        return new Answers(
                folder,
                machineName,
                heads,
                tapeSpeed,
                brief,
                devices,
                loopback,
                recording,
                measured);
    }

    /** Whether a step was done. */
    boolean isDone(Step step) {
        return switch (step) {
            case MACHINE -> !machineName.isEmpty();
            case LOOPBACK -> loopback != null;
            case CAPTURE -> recording != null;
            case MEASURE -> session != null;
            default -> false;
        };
    }
}
