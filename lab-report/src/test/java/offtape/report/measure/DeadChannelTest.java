package offtape.report.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.report.measure.sweep.FollowedSweep;
import offtape.report.measure.sweep.TurnedSweep;
import offtape.report.result.Distortion;
import offtape.report.result.Response;
import org.junit.jupiter.api.Test;

/** What is heard on a dead channel is the other one's crosstalk, and is not told. */
class DeadChannelTest {

    private static final double[] HZ = {100, 1000};

    private static final Response LEFT = MadeResults.response("left", -20, HZ, 1, 0);
    private static final Response RIGHT = MadeResults.response("right", -20, HZ, 2, 0);

    private static FollowedSweep sweep(double levelDb) {
        return TurnedSweep.of(
                new Cue.Sweep("sweep", ChannelSet.BOTH, 0, 8000, 100, 1000, levelDb),
                0,
                1,
                hz -> 0,
                hz -> 0);
    }

    @Test
    void twoLivingChannelsKeepTheirResponses() {
        List<Response> both = List.of(LEFT, RIGHT);
        assertEquals(both, DeadChannel.without(-1, List.of(sweep(-20)), both));
    }

    /** Also where its crosstalk was too weak to be read as a response. */
    @Test
    void eachSweepHasAnEmptyResponseOfTheDeadChannel() {
        List<Response> told =
                DeadChannel.without(0, List.of(sweep(-20), sweep(-10)), List.of(LEFT, RIGHT));
        assertEquals(3, told.size());
        assertEquals(RIGHT, told.get(0));
        for (Response none : told.subList(1, 3)) {
            assertEquals("left", none.channel());
            assertEquals(0, none.frequencyHz().length);
            assertEquals("The left channel is dead.", none.lowerEdge().reason());
            assertEquals("The left channel is dead.", none.upperEdge().reason());
            assertEquals("The left channel is dead.", none.ripple().reason());
        }
        assertEquals(-20, told.get(1).levelDb());
        assertEquals(-10, told.get(2).levelDb());
    }

    @Test
    void aLadderOfItHasNoSteps() {
        Distortion none =
                new DeadChannel(1)
                        .distortion(new Cue.Ladder("l", ChannelSet.BOTH, 0, 8000, 315, List.of()));
        assertEquals("right", none.channel());
        assertEquals(315, none.frequencyHz());
        assertEquals(List.of(), none.steps());
        assertEquals("The right channel is dead.", none.levelAtK3ThreePercent().reason());
        assertEquals("The right channel is dead.", none.maximumOutputLevel().reason());
    }
}
