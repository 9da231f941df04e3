package offtape.cli.command;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Supplier;
import offtape.core.audio.AudioSource;

/** Where the time of a measurement goes, part by part, for those who ask for details. */
final class PartTimes {

    private static final double NANOSECONDS = 1e-9;

    private final Map<String, Long> parts = new LinkedHashMap<>();
    private final LongAdder decoding = new LongAdder();

    /**
     * Does a part of the work; the same name again adds to it.
     *
     * @param part its name, which is that of a text as well
     */
    <T> T of(String part, Supplier<T> work) {
        long start = System.nanoTime();
        try {
            return work.get();
        } finally {
            parts.merge(part, System.nanoTime() - start, Long::sum);
        }
    }

    /** What the time from the start of the process until now went into, before any part. */
    void startUp() {
        ProcessHandle.current()
                .info()
                .startInstant()
                .map(start -> Duration.between(start, Instant.now()))
                .ifPresent(d -> parts.put("start-up", d.toNanos()));
    }

    /** The same sound; the time it takes to read is counted, on whatever thread. */
    AudioSource counted(AudioSource source) {
        return new CountedSource(source, decoding);
    }

    /** A line a part, and one for what is read from the files within them. */
    List<String> lines(Speech speech) {
        List<String> lines = new ArrayList<>();
        parts.forEach(
                (part, nanoseconds) -> lines.add(line(speech, "session.time", part, nanoseconds)));
        lines.add(line(speech, "session.time-within", "decode", decoding.sum()));
        return lines;
    }

    private static String line(Speech speech, String key, String part, long nanoseconds) {
        String name = speech.say("session.time-" + part.replace(' ', '-'));
        return speech.say(key, name, nanoseconds * NANOSECONDS);
    }

    /** Sound whose reading is timed. */
    private record CountedSource(AudioSource source, LongAdder nanoseconds) implements AudioSource {

        @Override
        public int sampleRateHz() {
            return source.sampleRateHz();
        }

        @Override
        public int channels() {
            return source.channels();
        }

        @Override
        public long frames() {
            return source.frames();
        }

        @Override
        public double[][] read(long startFrame, int count) {
            long start = System.nanoTime();
            double[][] sound = source.read(startFrame, count);
            nanoseconds.add(System.nanoTime() - start);
            return sound;
        }

        @Override
        public String name() {
            return source.name();
        }

        @Override
        public void close() {
            source.close();
        }
    }
}
