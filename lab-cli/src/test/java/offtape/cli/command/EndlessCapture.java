package offtape.cli.command;

import java.util.List;
import java.util.concurrent.locks.LockSupport;
import offtape.cli.sound.SoundLayers;
import offtape.cli.terminal.Terminal;

/**
 * The command in a process of its own, with a made-up device that says so on standard output when
 * it has recorded a second, and then gives nothing more until it is stopped.
 */
public final class EndlessCapture {

    private EndlessCapture() {}

    /** Runs the command. */
    public static void main(String[] args) {
        MadeUpLayer layer = new MadeUpLayer("endless");
        layer.faults =
                stream -> {
                    stream.stoppedAfter = CaptureBench.RATE;
                    stream.stopping =
                            () -> {
                                System.out.println("recorded");
                                while (!stream.isStopped()) {
                                    LockSupport.parkNanos(1_000_000);
                                }
                            };
                };
        System.exit(
                Commands.run(
                        Terminal.system(), new SoundLayers(List.of(layer)), Tool.FORGETFUL, args));
    }
}
