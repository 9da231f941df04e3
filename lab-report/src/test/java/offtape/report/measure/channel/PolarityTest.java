package offtape.report.measure.channel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import offtape.report.locate.ProgrammeReturn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signs of the channels and their words. */
class PolarityTest {

    @ParameterizedTest
    @CsvSource({"-1, 1", "1, -1"})
    void aSweepTellsThem(int left, int right) {
        ProgrammeReturn ret = Pair.of(Pair.SWEEP).gains(left, 0.3 * right).play();
        Polarity polarity = Polarity.of(ret, List.of(Pair.follow(ret, Pair.SWEEP)));
        assertEquals(List.of(left, right), polarity.signs());
    }

    /** The markers found the left channel upright and the right one inverted. */
    @Test
    void whereNoSweepIsClearTheMarkersTell() {
        ProgrammeReturn ret = Pair.of(Pair.SWEEP).gains(0, 0).play();
        assertEquals(List.of(1, -1), Polarity.of(ret, List.of()).signs());
        assertEquals(
                List.of(1, -1), Polarity.of(ret, List.of(Pair.follow(ret, Pair.SWEEP))).signs());
    }

    /** Two sweeps, of which one is not heard, say half as much as one: 0.5 is clear still. */
    @Test
    void aSweepThatIsNotHeardTakesFromTheOther() {
        ProgrammeReturn ret = Pair.of(Pair.SWEEP).gains(-1, 1).play();
        ProgrammeReturn silent = Pair.of(Pair.SWEEP).gains(0, 0).play();
        var heard = Pair.follow(ret, Pair.SWEEP);
        var not = Pair.follow(silent, Pair.SWEEP);
        assertEquals(List.of(-1, 1), Polarity.of(ret, List.of(heard, not)).signs());
        // one of six is less than a fifth
        assertEquals(
                List.of(1, -1), Polarity.of(ret, List.of(heard, not, not, not, not, not)).signs());
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1, normal, -1",
        "-1, -1, inverted, -1",
        "1, -1, normal, 1",
        "-1, 1, inverted, 0",
        "0, -1, inverted, -1",
        "0, 1, normal, -1",
        "-1, 0, inverted, -1",
        "0, 0, normal, -1"
    })
    void theFirstThatIsHeardGivesTheWord(int left, int right, String word, int odd) {
        Polarity polarity = new Polarity(List.of(left, right));
        assertEquals(word, polarity.word());
        assertEquals(odd, polarity.oddChannel());
    }

    @Test
    void aSingleChannelHasNoOddOne() {
        assertEquals(-1, new Polarity(List.of(-1)).oddChannel());
        assertEquals("inverted", new Polarity(List.of(-1)).word());
    }
}
