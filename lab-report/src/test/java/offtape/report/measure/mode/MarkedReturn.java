package offtape.report.measure.mode;

import java.util.List;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.unit.Quantity;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;
import offtape.report.measure.loopback.KnownInterface;
import offtape.report.measure.speed.HeardDeviation;
import offtape.report.measure.speed.ToneReading;
import offtape.report.result.InterfaceFigures;
import offtape.report.result.LoopbackSession;
import offtape.report.result.LoopbackUse;
import offtape.report.result.Speed;

/**
 * A programme of a minute that holds three markers only, whose middles are at 1, 30 and 59 s, so
 * that all that is known of its return is where these lie. The sound itself is never looked at.
 *
 * <p>A line through them: their mean is 30 s, the sum of squares about it 2 · 29² = 1682 s². Three
 * parts make the factor of uncertainty 2 · (1 + 2/3), and each is known within 2 µs, so that the
 * slope is known within 10/3 · 2 µs · √(1/1682) = 0.16255 ppm, the start within 10/3 · 2 µs · √(1/3
 * + 30²/1682) = 6.2126 µs.
 */
final class MarkedReturn {

    static final double SLOPE_PPM = 0.16255;
    static final double START_MS = 6.2126e-3;

    private static final int RATE = 1000;

    private static final CueSheet SHEET =
            new CueSheet(
                    RATE,
                    60L * RATE,
                    -18,
                    null,
                    List.of(marker("start", 750), marker("middle", 29_750), marker("end", 58_750)));

    private MarkedReturn() {}

    private static Cue marker(String id, long frame) {
        return new Cue.Marker(id, ChannelSet.BOTH, frame, RATE / 2);
    }

    /** A return that is late by so much and whose recording clock is fast by so much. */
    static ProgrammeReturn of(double lateSeconds, double ppm) {
        return of(TimeMap.straight(lateSeconds, 1 + 1e-6 * ppm, 60), true, true);
    }

    /** A return with the place of each moment, and whether its first and last markers are heard. */
    static ProgrammeReturn of(TimeMap map, boolean first, boolean last) {
        double late = map.recordingSeconds(0);
        Location place =
                new Location(map, 100, late, 0.002, List.of(1), first, last, 0, 100, List.of());
        MemoryAudio none = new MemoryAudio("p.wav", RATE, new double[1]);
        return new ProgrammeReturn(new Programme(SHEET, none), none, place);
    }

    /**
     * What a speed tone tells, percent.
     *
     * @param floor of the weighted figure, or null
     */
    static ToneReading tone(double wowRms, double weightedRms, Double floor, HeardDeviation heard) {
        Quantity no = Quantity.unknown("Not asked for.");
        Speed speed =
                new Speed(
                        percent(0.3),
                        percent(0.1),
                        no,
                        no,
                        percent(weightedRms),
                        no,
                        no,
                        percent(wowRms),
                        no,
                        floor == null ? no : percent(floor),
                        3150.0,
                        List.of(),
                        null,
                        null,
                        null,
                        null,
                        null,
                        no,
                        null,
                        null,
                        null,
                        List.of());
        return new ToneReading(speed, heard);
    }

    private static Quantity percent(double value) {
        return Quantity.known(value, "%", 0.002);
    }

    /**
     * An interface that measured itself.
     *
     * @param delayMs known within 0.01 ms, or null
     */
    static KnownInterface loop(Double delayMs, Double clockPpm) {
        Quantity no = Quantity.unknown("Not asked for.");
        Quantity delay = delayMs == null ? no : Quantity.known(delayMs, "ms", 0.01);
        InterfaceFigures figures = new InterfaceFigures(delay, clockPpm, no, no, no, List.of());
        return KnownInterface.of(
                new LoopbackSession("loop", RATE, "", new LoopbackUse("", ""), figures));
    }
}
