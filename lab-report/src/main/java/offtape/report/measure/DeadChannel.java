package offtape.report.measure;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.programme.Cue;
import offtape.core.text.Sentences;
import offtape.core.unit.Quantity;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.result.Distortion;
import offtape.report.result.Response;

/** What is said of a channel that does not return the programme: nothing, and why. */
final class DeadChannel {

    private static final Sentences SAID = Sentences.near(DeadChannel.class);

    private final String channel;
    private final Quantity reason;

    DeadChannel(int channel) {
        this.channel = ProgrammeReturn.channelName(channel);
        this.reason = Quantity.unknown(SAID.say("dead-channel", this.channel));
    }

    /**
     * The responses with those of the dead channel, which are the other one's crosstalk, replaced.
     *
     * @param dead the dead channel, or −1 if there is none
     */
    static List<Response> without(int dead, List<FollowedSweep> sweeps, List<Response> responses) {
        if (dead < 0) {
            return responses;
        }
        DeadChannel channel = new DeadChannel(dead);
        Stream<Response> living =
                responses.stream().filter(r -> !r.channel().equals(channel.channel));
        Stream<Response> none = sweeps.stream().map(s -> channel.response(s.cue()));
        return Stream.concat(living, none).toList();
    }

    private Response response(Cue.Sweep sweep) {
        double[] none = {};
        return new Response(
                channel,
                sweep.levelDb(),
                none,
                none,
                none,
                reason,
                reason,
                reason,
                0,
                0,
                List.of(),
                List.of(),
                null,
                List.of());
    }

    Distortion distortion(Cue.Ladder ladder) {
        return new Distortion(
                channel,
                ladder.frequencyHz(),
                List.of(),
                reason,
                reason,
                reason,
                reason,
                reason,
                reason,
                reason,
                null,
                null);
    }
}
