package offtape.report.measure.mode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeSignal;
import offtape.report.locate.LateMoment;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import org.junit.jupiter.api.Test;

/** Moments of a return that is late by a whole number of frames. */
class LatenessTest {

    private static List<LateMoment> moments(boolean first, boolean last) {
        // knots at the markers' middles: late by 0.1, 0.2 and 0.4 s
        TimeMap map = new TimeMap(new double[] {1, 30, 59}, new double[] {1.1, 30.2, 59.4});
        return Lateness.of(MarkedReturn.of(map, first, last))
                .map(LatenessFit::moments)
                .orElse(List.of());
    }

    /** Recording less programme time, at the middle of each marker. */
    @Test
    void markersTellTheirMiddle() {
        List<LateMoment> all = moments(true, true);
        double[][] wanted = {{1, 0.1}, {30, 0.2}, {59, 0.4}};
        assertEquals(
                List.of("start", "middle", "end"), all.stream().map(LateMoment::part).toList());
        for (int i = 0; i < wanted.length; i++) {
            assertEquals(wanted[i][0], all.get(i).programmeSeconds(), 1e-12);
            assertEquals(wanted[i][1], all.get(i).lateSeconds(), 1e-12);
        }
    }

    /** A half of the programme whose marker was not heard is not asked. */
    @Test
    void markersThatWereNotHeardTellNothing() {
        assertEquals(List.of(), moments(false, true));
        assertEquals(List.of(), moments(true, false));
        assertEquals(List.of(), moments(false, false));
    }

    /**
     * Markers alone tell nothing (two of them); a sweep and a tone are late by the same 1234 frames
     * of 16 kHz, 77.125 ms, the tone though its phase tells whole periods only.
     */
    @Test
    void sweepsAndTonesTellItMoreFinely() {
        int rate = 16_000;
        int late = 1234;
        CueSheet sheet =
                new CueSheet(
                        rate,
                        10L * rate,
                        -18,
                        null,
                        List.of(
                                new Cue.Marker("start", ChannelSet.BOTH, rate / 4, rate / 4),
                                new Cue.Sweep(
                                        "sweep", ChannelSet.BOTH, rate, 3L * rate, 100, 7000, -10),
                                new Cue.Tone(
                                        "speed", ChannelSet.BOTH, 5L * rate, 4L * rate, 3150, 0),
                                new Cue.Marker("end", ChannelSet.BOTH, 9 * rate + 4000, rate / 4)));
        double[][] sound = new ProgrammeSignal(sheet).read(0, (int) sheet.frames());
        double[] back = new double[11 * rate];
        System.arraycopy(sound[0], 0, back, late, sound[0].length);
        ProgrammeReturn ret = returned(sheet, sound, back, late, true);
        LatenessFit fit = Lateness.of(ret).orElseThrow();
        assertEquals(0.077125, fit.startSeconds(), 2e-6);
        assertEquals(0, fit.slopePpm(), 0.5);
        assertEquals(
                List.of("start", "end", "sweep", "speed"),
                fit.moments().stream().map(LateMoment::part).distinct().toList());
        var counts =
                fit.moments().stream()
                        .collect(Collectors.groupingBy(LateMoment::part, Collectors.counting()));
        assertTrue(counts.get("sweep") >= 2 && counts.get("speed") == 3, counts.toString());
        List<LateMoment> unheard =
                Lateness.of(returned(sheet, sound, back, late, false)).orElseThrow().moments();
        assertEquals(
                List.of("end", "sweep", "speed"),
                unheard.stream().map(LateMoment::part).distinct().toList());
    }

    /** A return that is late by so many frames, with its first marker heard or not. */
    private static ProgrammeReturn returned(
            CueSheet sheet, double[][] sound, double[] back, int late, boolean first) {
        int rate = sheet.sampleRateHz();
        Location place =
                new Location(
                        TimeMap.straight((double) late / rate, 1, 10),
                        11,
                        (double) late / rate,
                        0.001,
                        List.of(1),
                        first,
                        true,
                        0,
                        11,
                        List.of());
        return new ProgrammeReturn(
                new Programme(sheet, new MemoryAudio("p.wav", rate, sound)),
                new MemoryAudio("r.wav", rate, back),
                place);
    }
}
