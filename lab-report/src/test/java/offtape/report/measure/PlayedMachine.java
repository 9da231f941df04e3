package offtape.report.measure;

import offtape.core.audio.AudioSource;
import offtape.core.machine.MachineRun;

/** The whole return of a simulated machine, for programmes short enough to be held. */
public final class PlayedMachine {

    private PlayedMachine() {}

    /**
     * Sends a programme through a machine.
     *
     * @return samples of both channels
     */
    public static double[][] sound(MachineRun run, AudioSource programme) {
        double[][] sound = new double[2][(int) run.frames()];
        int[] written = new int[1];
        run.play(
                programme,
                (block, count) -> {
                    for (int c = 0; c < 2; c++) {
                        System.arraycopy(block[c], 0, sound[c], written[0], count);
                    }
                    written[0] += count;
                });
        return sound;
    }
}
