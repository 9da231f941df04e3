package offtape.report.locate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a location says that it covers. */
class LocationTest {

    /** Times of the programme are milliseconds here. */
    private static final int RATE = 1000;

    private static Location heard(
            double offset, double stretch, double recording, double from, double to) {
        return new Location(
                TimeMap.straight(offset, stretch, 10),
                recording,
                offset,
                0,
                List.of(1),
                true,
                true,
                from,
                to,
                List.of());
    }

    /**
     * A cue lies at offset + stretch · programme time. The ends of what is heard are known to 0.35
     * s, those of the recording exactly.
     */
    @ParameterizedTest
    @CsvSource({
        // offset, stretch, recording, heard from, to, cue's start and end in ms, covered
        "1, 1, 12, 0, 12, 0, 10000, true",
        // the recording's own ends
        "0, 1, 10, 0, 10, 0, 10000, true",
        "-0.5, 1, 12, 0, 12, 500, 2000, true",
        "-0.5, 1, 12, 0, 12, 499, 2000, false",
        "2, 1, 8, 0, 8, 1000, 6000, true",
        "2, 1, 8, 0, 8, 1000, 6001, false",
        // a longer return holds less
        "0, 2, 8, 0, 8, 1000, 4000, true",
        "0, 2, 8, 0, 8, 1000, 4001, false",
        // less is heard than is recorded
        "0, 1, 12, 3, 12, 2651, 4000, true",
        "0, 1, 12, 3, 12, 2649, 4000, false",
        "0, 1, 12, 0, 5, 1000, 5349, true",
        "0, 1, 12, 0, 5, 1000, 5351, false",
        // the margin does not reach over the recording's ends
        "-0.2, 1, 12, 0.1, 12, 199, 4000, false",
        "0, 1, 6, 0, 5.9, 1000, 6001, false",
    })
    void aCueIsCoveredIfAllOfItIsHeard(
            double offset,
            double stretch,
            double recording,
            double from,
            double to,
            long start,
            long end,
            boolean covered) {
        Cue cue = new Cue.Silence("c", ChannelSet.BOTH, start, end - start);
        assertEquals(covered, heard(offset, stretch, recording, from, to).covers(cue, RATE));
    }

    @Test
    void whatIsToldOfMarkersIsKept() {
        Location none = heard(0, 1, 12, 0, 12);
        assertEquals(List.of(), none.markers());
        List<MarkerSight> sights = new ArrayList<>(List.of(new MarkerSight(1, 0.001, 0.002)));
        Location one =
                new Location(
                        none.map(),
                        12,
                        0,
                        0,
                        none.signs(),
                        true,
                        true,
                        0,
                        12,
                        none.takes(),
                        sights);
        sights.clear();
        assertEquals(List.of(new MarkerSight(1, 0.001, 0.002)), one.markers());
    }

    /** What lies before the recording is not counted. */
    @Test
    void aTakeLastsAsLongAsItIsRecorded() {
        assertEquals(7.5, new Take(1.5, 9, true).seconds());
        assertEquals(9, new Take(-1.5, 9, true).seconds());
    }
}
