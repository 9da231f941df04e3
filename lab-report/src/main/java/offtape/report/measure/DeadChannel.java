package offtape.report.measure;

import java.util.List;
import offtape.core.programme.Cue;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.result.Distortion;
import offtape.report.result.Response;

/** What is said of a channel that does not return the programme: nothing, and why. */
final class DeadChannel {

    private final String channel;
    private final Quantity reason;

    DeadChannel(int channel) {
        this.channel = ProgrammeReturn.channelName(channel);
        this.reason = Quantity.unknown("The " + this.channel + " channel is dead.");
    }

    Response response(Cue.Sweep sweep) {
        double[] none = {};
        return new Response(
                channel, sweep.levelDb(), none, none, none, reason, reason, reason, 0, 0);
    }

    Distortion distortion(Cue.Ladder ladder) {
        return new Distortion(
                channel, ladder.frequencyHz(), List.of(), reason, reason, reason, reason, reason);
    }
}
