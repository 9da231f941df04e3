package offtape.report.measure;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.MemoryAudio;
import offtape.core.audio.WavEncoding;
import offtape.core.audio.WavFormat;
import offtape.core.audio.WavWriter;
import offtape.core.machine.ChannelsTruth;
import offtape.core.machine.MachineRun;
import offtape.core.machine.MachineTruth;
import offtape.core.machine.SimulatedMachine;
import offtape.core.machine.SteadyTone;
import offtape.core.machine.spec.MachineSpec;
import offtape.core.output.OutputFolder;
import offtape.core.programme.CueSheet;
import offtape.core.programme.Programme;
import offtape.core.programme.ProgrammeFolder;
import offtape.core.programme.ProgrammeWriter;
import offtape.core.standard.ItuBs468;
import offtape.core.unit.Decibels;
import offtape.report.measure.mode.Capture;
import offtape.report.result.Results;
import offtape.report.result.Session;

/**
 * A simulated machine, what was measured of it, and what should have been found: the truth about it
 * in the terms of the figures.
 */
record MeasuredMachine(
        TrialMachines.Machine machine, MachineRun run, MachineTruth truth, Results results) {

    /** Sends the machine's programme through it and measures what returns. */
    static MeasuredMachine of(TrialMachines.Machine machine, Session session, Path folder) {
        Path place = folder.resolve(machine.name().replaceAll("[^a-z0-9]+", "-"));
        try (OutputFolder out = OutputFolder.open(place, false)) {
            ProgrammeWriter.write(machine.sheet(), out);
            out.commit();
        }
        Path wav = place.resolve("return.wav");
        try (Programme programme = ProgrammeFolder.open(place)) {
            MachineRun run = SimulatedMachine.of(machine.spec()).run(programme.sheet());
            WavFormat format = new WavFormat(run.sampleRateHz(), 2, WavEncoding.PCM_24);
            try (WavWriter writer = WavWriter.create(wav, format)) {
                run.play(
                        programme.audio(),
                        (block, count) ->
                                writer.write(
                                        new double[][] {
                                            Arrays.copyOf(block[0], count),
                                            Arrays.copyOf(block[1], count)
                                        }));
            }
            try (var sound = AudioFiles.open(wav)) {
                Results results =
                        Measurement.run(
                                programme,
                                sound,
                                session,
                                Capture.of(machine.spec().mode()),
                                List.of());
                return new MeasuredMachine(machine, run, run.truth(), results);
            } finally {
                Files.delete(wav);
                Files.delete(place.resolve(ProgrammeFolder.SOUND));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What steady tones become on a channel of that name. */
    SteadyTone tone(String channel) {
        return run.tone(channel.equals("left") ? 0 : 1);
    }

    /**
     * How late the upper edge of the electronics lets everything well below it come: a Butterworth
     * filter of second order has √2/ω, ω being 2·fs·tan(πf/fs) where a bilinear transform realises
     * it at a rate fs and keeps its edge (Oppenheim and Schafer). It is part of the path but not of
     * its map of time.
     */
    double edgeDelayMs() {
        double rate = run.sampleRateHz();
        return IntStream.range(0, 2)
                .mapToDouble(c -> machine.spec().electronics().channel(c).upperEdgeHz())
                .map(hz -> 1000 * Math.sqrt(2) / (2 * rate * Math.tan(Math.PI * hz / rate)))
                .average()
                .orElseThrow();
    }

    /**
     * Levels are re the reference tone as it returns, and that holds what leaks in of the other
     * channel's, early or late by the azimuth.
     */
    double leakDb(int channel) {
        ChannelsTruth channels = truth.channels();
        double leak =
                Decibels.toAmplitude(
                        channel == 0
                                ? channels.crosstalkRightToLeft()
                                : channels.crosstalkLeftToRight());
        double turn = 2e-6 * Math.PI * machine.midHz() * channels.interchannelDelay();
        return Decibels.ofAmplitude(Math.hypot(1 + leak * Math.cos(turn), leak * Math.sin(turn)));
    }

    /**
     * The truth is re 1 kHz; slow tape has its reference at 315 Hz, which returns so much louder.
     */
    double referenceDb(int channel) {
        SteadyTone tone = run.tone(channel);
        return Decibels.ofAmplitude(tone.peak(1, machine.midHz(), 0) / tone.peak(1, 1000, 0));
    }

    /**
     * What the meter of BS.468, whose detector its own tables hold, reads of the machine with
     * nothing on the tape, re the reference tone as it returns, both channels.
     *
     * @param seconds how long it is read
     */
    double[] quasiPeakOfHissDb(int seconds) {
        int rate = run.sampleRateHz();
        int frames = seconds * rate;
        CueSheet nothing = new CueSheet(rate, frames, -18.0, null, List.of());
        MachineRun quiet = SimulatedMachine.of(noiseAlone(machine.spec())).run(nothing);
        double[][] noise = new double[2][(int) quiet.frames()];
        int[] filled = {0};
        quiet.play(
                new MemoryAudio("nothing", rate, new double[2][frames]),
                (block, count) -> {
                    for (int c = 0; c < 2; c++) {
                        System.arraycopy(block[c], 0, noise[c], filled[0], count);
                    }
                    filled[0] += count;
                });
        ItuBs468 meter = ItuBs468.atRate(rate);
        return IntStream.range(0, 2)
                .mapToDouble(
                        c ->
                                Decibels.ofAmplitude(meter.quasiPeak(noise[c]) * Math.sqrt(2))
                                        - Decibels.ofAmplitude(
                                                run.tone(c).peak(1, machine.midHz(), 0)))
                .toArray();
    }

    /** Hiss and hum of a machine, drawn anew: what was measured must not be its own truth. */
    private static MachineSpec noiseAlone(MachineSpec m) {
        return new MachineSpec(
                m.format(),
                m.version(),
                m.name(),
                m.note(),
                m.seed() + 1,
                m.mode(),
                m.tapeSpeedMmPerS(),
                null,
                m.heads().magnetisationAlone(),
                null,
                m.electronics(),
                null,
                m.hiss(),
                m.hum(),
                List.of(),
                m.recorder(),
                null,
                null,
                m.bias(),
                null,
                m.swapped());
    }
}
