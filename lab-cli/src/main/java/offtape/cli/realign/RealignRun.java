package offtape.cli.realign;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.align.Alignment;
import offtape.core.audio.AudioFile;
import offtape.core.audio.AudioFiles;
import offtape.core.audio.AudioSource;
import offtape.core.audio.BroadcastNote;
import offtape.core.audio.WavEncoding;
import offtape.core.realign.Expectation;
import offtape.core.realign.FoundTrack;
import offtape.core.realign.TrackMatch;
import offtape.core.text.Sentences;
import offtape.core.unit.Decibels;

/**
 * Puts one return back in time and writes it.
 *
 * @param isUnwarped whether slow errors of time are taken out
 * @param isLevelSet whether the path's gain is taken back
 * @param encoding of the file; what does not fit it is written as float
 * @param session what a session knows of time, or null
 */
public record RealignRun(
        boolean isUnwarped, boolean isLevelSet, WavEncoding encoding, SessionTiming session) {

    private static final Sentences SAID = Sentences.near(RealignRun.class);

    /**
     * Does it.
     *
     * @param file where the sound goes
     * @throws offtape.core.fault.UnusableInputException if the return cannot be used
     */
    public RealignReport run(RealignPair pair, Path file) {
        try (AudioFile original = AudioFiles.open(pair.original());
                AudioFile returned = AudioFiles.open(pair.returned())) {
            Optional<Expectation> expected =
                    Optional.ofNullable(session)
                            .map(SessionTiming::delayMs)
                            .map(ms -> new Expectation(ms / 1000));
            FoundTrack found = TrackMatch.follow(original, returned, expected, isUnwarped);
            AudioSource straight =
                    found.straightened(returned, isUnwarped, isLevelSet, original.frames());
            WavEncoding used =
                    SoundOutput.write(straight, file, encoding, note(original, returned));
            return report(pair, original, returned, found, used);
        }
    }

    /** The return lies where its original lies, so a workstation puts both in one place. */
    private static BroadcastNote note(AudioFile original, AudioFile returned) {
        return original.describing(
                "Return " + returned.name() + ", brought back in time with " + original.name());
    }

    private RealignReport report(
            RealignPair pair,
            AudioSource original,
            AudioSource returned,
            FoundTrack found,
            WavEncoding used) {
        Alignment line = found.alignment();
        double rate = original.sampleRateHz();
        double last = line.startFrame() + line.step() * (original.frames() - 1);
        long before = Math.max(0, (long) Math.ceil(-line.startFrame() / line.step()));
        long behind = (long) Math.ceil((last - (returned.frames() - 1)) / line.step() - 1e-6);
        boolean isRemoved = isUnwarped && found.warp().isSignificant();
        double delayMs = 1000 * line.startFrame() / rate;
        double ppm = line.step() == 1 ? 0 : line.fastPpm();
        return new RealignReport(
                RealignReport.FORMAT,
                1,
                pair.original().getFileName().toString(),
                pair.returned().getFileName().toString(),
                pair.output(),
                original.sampleRateHz(),
                original.frames(),
                line.startFrame(),
                delayMs,
                2 * found.delayDoubtFrames(),
                ppm,
                2 * found.ppmDoubt(),
                line.gains().stream().map(RealignRun::channel).toList(),
                isLevelSet,
                line.isExact() && !isRemoved,
                new RealignReport.Warp(
                        isRemoved,
                        found.warp().rmsMicroseconds(),
                        isRemoved ? found.warp().doubtMicroseconds() : null,
                        found.warp().swingsHz()),
                found.coherence(),
                Math.min(before, original.frames()),
                Math.max(0, Math.min(behind, original.frames())),
                used.isFloating() ? "float-32" : "pcm-" + used.bits(),
                session == null
                        ? null
                        : AgainstSession.of(session, delayMs, ppm, 2 * found.ppmDoubt()),
                warnings(found, original, returned, used, before, behind, rate));
    }

    private static RealignReport.Channel channel(double gain) {
        return new RealignReport.Channel(
                Decibels.ofAmplitude(Math.abs(gain)), gain < 0 ? "inverted" : "normal");
    }

    private List<String> warnings(
            FoundTrack found,
            AudioSource original,
            AudioSource returned,
            WavEncoding used,
            long before,
            long behind,
            double rate) {
        List<String> all = new ArrayList<>();
        if (found.other().isPresent()) {
            all.add(SAID.say("music-repeats", found.other().getAsDouble()));
        }
        if (!found.isWholeRange()) {
            all.add(SAID.say("bass-only"));
        }
        if (before > 0) {
            all.add(SAID.say("begins-late", before / rate));
        }
        if (behind > 0) {
            all.add(SAID.say("ends-early", behind / rate));
        }
        clipped(all, "clipped-original", original);
        clipped(all, "clipped-return", returned);
        if (used != encoding) {
            all.add(SAID.say("peaks-beyond"));
        }
        return all;
    }

    private static void clipped(List<String> all, String key, AudioSource sound) {
        long[] counts = FlatTops.count(sound);
        for (int c = 0; c < counts.length; c++) {
            if (counts[c] > 0) {
                all.add(SAID.say(key, counts[c], c + 1));
            }
        }
    }
}
