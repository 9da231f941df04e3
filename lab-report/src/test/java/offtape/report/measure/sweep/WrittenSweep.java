package offtape.report.measure.sweep;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.MemoryAudio;
import offtape.core.programme.ChannelSet;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ExponentialSweep;
import offtape.core.programme.Programme;
import offtape.report.locate.Location;
import offtape.report.locate.ProgrammeReturn;
import offtape.report.locate.TimeMap;

/**
 * A sweep and its return, both written by formula at a low sample rate: what costs milliseconds
 * where a simulated machine costs seconds.
 *
 * @param cue the only cue of the programme
 * @param programmeChannels channels of the programme's sound
 * @param recordingRateHz frames a second of the return
 * @param speed speed at which the return was replayed, which the map of time knows
 * @param leadSeconds where the programme's start lies in the return, as the map of time has it
 * @param lateSeconds how much later than that it truly is
 * @param channels what each channel of the return does
 */
record WrittenSweep(
        Cue.Sweep cue,
        int programmeChannels,
        int recordingRateHz,
        double speed,
        double leadSeconds,
        double lateSeconds,
        List<Path> channels) {

    static final int RATE = 8000;

    private static final double PEAK = 0.5;
    private static final int START = 4000;
    private static final double TAIL_S = 0.5;

    /** What a channel makes of a sweep of peak 1. */
    @FunctionalInterface
    interface Path {

        /**
         * A sample of the return, re the peak of the sweep.
         *
         * @param phase of the sweep, radians
         * @param hz its frequency in the programme
         */
        double at(double phase, double hz);
    }

    /** Nothing changed but the level. */
    static Path gain(double factor) {
        return (phase, hz) -> factor * Math.sin(phase);
    }

    /** Three seconds from 40 Hz to 3 kHz on both channels, which comes back as it is. */
    static WrittenSweep plain() {
        return of(40, 3000, 3, gain(1), gain(1));
    }

    static WrittenSweep of(double startHz, double endHz, double seconds, Path... channels) {
        long frames = Math.round(seconds * RATE);
        return new WrittenSweep(
                new Cue.Sweep("sweep", ChannelSet.BOTH, START, frames, startHz, endHz, -6),
                2,
                RATE,
                1,
                0.2,
                0,
                List.of(channels));
    }

    /** The same sounding on other channels of the programme. */
    WrittenSweep on(ChannelSet set) {
        Cue.Sweep other =
                new Cue.Sweep(
                        cue.id(),
                        set,
                        cue.startFrame(),
                        cue.frames(),
                        cue.startHz(),
                        cue.endHz(),
                        cue.levelDb());
        return new WrittenSweep(
                other,
                programmeChannels,
                recordingRateHz,
                speed,
                leadSeconds,
                lateSeconds,
                channels);
    }

    WrittenSweep programmeOf(int count) {
        return new WrittenSweep(
                cue, count, recordingRateHz, speed, leadSeconds, lateSeconds, channels);
    }

    WrittenSweep recordedAt(int rateHz) {
        return new WrittenSweep(
                cue, programmeChannels, rateHz, speed, leadSeconds, lateSeconds, channels);
    }

    WrittenSweep atSpeed(double ratio) {
        return new WrittenSweep(
                cue, programmeChannels, recordingRateHz, ratio, leadSeconds, lateSeconds, channels);
    }

    WrittenSweep later(double seconds) {
        return new WrittenSweep(
                cue, programmeChannels, recordingRateHz, speed, leadSeconds, seconds, channels);
    }

    /** The sweep by its formula. */
    ExponentialSweep sweep() {
        return ExponentialSweep.of(cue, RATE);
    }

    /** Start of the sweep in the programme. */
    double startSeconds() {
        return (double) START / RATE;
    }

    /** The return with the programme found in it. */
    ProgrammeReturn ret() {
        double length = (double) cue.endFrame() / RATE + TAIL_S;
        TimeMap map = TimeMap.straight(leadSeconds, 1 / speed, length);
        double seconds = leadSeconds + length / speed;
        CueSheet sheet = new CueSheet(RATE, Math.round(length * RATE), 0, null, List.of(cue));
        double[][] sent = new double[programmeChannels][];
        for (int c = 0; c < sent.length; c++) {
            boolean sounds =
                    cue.channels() == ChannelSet.BOTH
                            || sent.length == 1
                            || cue.channels() == (c == 0 ? ChannelSet.LEFT : ChannelSet.RIGHT);
            sent[c] = sound((int) sheet.frames(), RATE, gain(sounds ? 1 : 0), t -> t);
        }
        double[][] back =
                channels.stream()
                        .map(
                                path ->
                                        sound(
                                                (int) Math.round(seconds * recordingRateHz),
                                                recordingRateHz,
                                                path,
                                                t -> map.programmeSeconds(t - lateSeconds)))
                        .toArray(double[][]::new);
        Integer[] signs = new Integer[channels.size()];
        Arrays.fill(signs, 1);
        Location place =
                new Location(
                        map,
                        seconds,
                        leadSeconds,
                        0.001,
                        List.of(signs),
                        true,
                        true,
                        0,
                        seconds,
                        List.of());
        return new ProgrammeReturn(
                new Programme(sheet, new MemoryAudio("p.wav", RATE, sent)),
                new MemoryAudio("r.wav", recordingRateHz, back),
                place);
    }

    private double[] sound(
            int frames, int rateHz, Path path, java.util.function.DoubleUnaryOperator time) {
        ExponentialSweep sweep = sweep();
        return IntStream.range(0, frames)
                .mapToDouble(i -> time.applyAsDouble((double) i / rateHz) - startSeconds())
                .map(
                        t ->
                                t < 0 || t > sweep.seconds()
                                        ? 0
                                        : PEAK
                                                * path.at(
                                                        sweep.phaseRadians(t),
                                                        sweep.frequencyHz(t)))
                .toArray();
    }
}
