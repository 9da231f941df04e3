package offtape.report.apply.listen;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import offtape.core.text.Sentences;

/** How the two sounds were made alike, in sentences for the terminal and for the end of a test. */
record ListenWords(ListenFacts facts) {

    private static final Sentences SAID = Sentences.near(ListenWords.class);

    /** Delays below this are none, frames. */
    private static final double NO_DELAY = 0.005;

    List<String> sentences() {
        List<String> out = new ArrayList<>();
        out.add(level("A", facts.a()));
        out.add(level("B", facts.b()));
        out.addAll(time());
        out.add(
                SAID.say(
                        facts.channels() == 1 ? "part-one-channel" : "part-two-channels",
                        facts.seconds(),
                        facts.fromSeconds(),
                        facts.sampleRateHz()));
        out.add(word());
        clipped(facts.a(), "A", out);
        clipped(facts.b(), "B", out);
        if (facts.isSame()) {
            out.add(SAID.say("same"));
        }
        if ("dip".equals(facts.switching())) {
            out.add(SAID.say("dips"));
        }
        return out;
    }

    private static String level(String name, ListenSound sound) {
        return sound.gainDb() == 0
                ? SAID.say("loudness-kept", name, sound.loudnessLufs())
                : SAID.say("loudness-lowered", name, sound.loudnessLufs(), -sound.gainDb());
    }

    private List<String> time() {
        ListenTime time = facts.time();
        if (time == null) {
            return List.of(SAID.say("time-as-they-are"));
        }
        List<String> out = new ArrayList<>();
        if (Math.abs(time.delayFrames()) < NO_DELAY) {
            out.add(SAID.say("time-together"));
        } else {
            out.add(
                    SAID.say(
                            time.delayFrames() > 0 ? "time-late" : "time-early",
                            Math.abs(time.delayFrames()),
                            Math.abs(time.delayMs())));
        }
        if (Math.abs(time.fastPpm()) >= 0.05) {
            out.add(
                    SAID.say(
                            time.fastPpm() > 0 ? "time-fast" : "time-slow",
                            Math.abs(time.fastPpm())));
        }
        if (time.partOffFrames() != 0 || time.partFastPpm() != time.fastPpm()) {
            out.add(
                    SAID.say(
                            time.partOffFrames() > 0 ? "time-part-later" : "time-part-earlier",
                            Math.abs(time.partOffFrames())));
        }
        polarity(time).ifPresent(key -> out.add(SAID.say(key)));
        return out;
    }

    /** The name of the sentence on polarity, unless it is normal. */
    private static Optional<String> polarity(ListenTime time) {
        if ("normal".equals(time.polarity())) {
            return Optional.empty();
        }
        boolean isOne = "mixed".equals(time.polarity());
        if (time.isPolarityTurned()) {
            return Optional.of(isOne ? "polarity-one-turned" : "polarity-turned");
        }
        return Optional.of(isOne ? "polarity-one-stays" : "polarity-stays");
    }

    private String word() {
        boolean isDitheredA = facts.a().isDithered();
        boolean isDitheredB = facts.b().isDithered();
        if (isDitheredA && isDitheredB) {
            return SAID.say("word-both-dithered");
        }
        if (isDitheredA || isDitheredB) {
            return SAID.say(isDitheredA ? "word-a-dithered" : "word-b-dithered");
        }
        return SAID.say("word-whole");
    }

    private static void clipped(ListenSound sound, String name, List<String> out) {
        if (sound.clippedPlaces() == 1) {
            out.add(SAID.say("clipped-once", name));
        }
        if (sound.clippedPlaces() > 1) {
            out.add(SAID.say("clipped", name, sound.clippedPlaces()));
        }
    }
}
