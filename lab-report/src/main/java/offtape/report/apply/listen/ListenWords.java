package offtape.report.apply.listen;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** How the two sounds were made alike, in sentences for the terminal and for the end of a test. */
record ListenWords(ListenFacts facts) {

    /** Delays below this are none, frames. */
    private static final double NO_DELAY = 0.005;

    List<String> sentences() {
        List<String> out = new ArrayList<>();
        out.add(level("A", facts.a()));
        out.add(level("B", facts.b()));
        out.addAll(time());
        out.add(
                text(
                        "The part is %.2f s long, from %.2f s of A on; %d Hz, %s.",
                        facts.seconds(),
                        facts.fromSeconds(),
                        facts.sampleRateHz(),
                        facts.channels() == 1 ? "one channel" : "two channels"));
        out.add(word());
        clipped(facts.a(), "A", out);
        clipped(facts.b(), "B", out);
        if (facts.isSame()) {
            out.add(
                    "A and B are the same to the last bit, so there is nothing to hear: useful as a"
                            + " check of the listening itself.");
        }
        if ("dip".equals(facts.switching())) {
            out.add(
                    "A and B are too unlike to be blended unheard, so each switch dips for 10 ms,"
                            + " whatever X is.");
        }
        return out;
    }

    private static String level(String name, ListenSound sound) {
        String gain =
                sound.gainDb() == 0
                        ? "and is left as it is"
                        : text("and is lowered by %.2f dB", -sound.gainDb());
        return text("%s has %.2f LUFS (ITU-R BS.1770) %s.", name, sound.loudnessLufs(), gain);
    }

    private List<String> time() {
        ListenTime time = facts.time();
        if (time == null) {
            return List.of("Both are taken as they are, without a search for a delay.");
        }
        List<String> out = new ArrayList<>();
        if (Math.abs(time.delayFrames()) < NO_DELAY) {
            out.add("B is in time with A.");
        } else {
            String side = time.delayFrames() > 0 ? "late" : "early";
            out.add(
                    text(
                            "B was %.2f samples (%.3f ms) %s and is brought in time.",
                            Math.abs(time.delayFrames()), Math.abs(time.delayMs()), side));
        }
        if (Math.abs(time.fastPpm()) >= 0.05) {
            String side = time.fastPpm() > 0 ? "fast" : "slow";
            out.add(
                    text(
                            "B ran %.1f ppm %s, which is taken back; wow and flutter stay.",
                            Math.abs(time.fastPpm()), side));
        }
        if (time.partOffFrames() != 0 || time.partFastPpm() != time.fastPpm()) {
            out.add(
                    text(
                            "In the part B lay %.2f samples %s than that mean course says, so it was"
                                    + " brought in time there by itself.",
                            Math.abs(time.partOffFrames()),
                            time.partOffFrames() > 0 ? "later" : "earlier"));
        }
        polarity(time, out);
        return out;
    }

    private static void polarity(ListenTime time, List<String> out) {
        if ("normal".equals(time.polarity())) {
            return;
        }
        String what = "mixed".equals(time.polarity()) ? "One channel of B is" : "B is";
        out.add(
                time.isPolarityTurned()
                        ? what + " inverted in polarity, which is set right."
                        : what
                                + " inverted in polarity and stays so; --turn-polarity sets it right.");
    }

    private String word() {
        boolean isDithered = facts.a().isDithered() || facts.b().isDithered();
        if (!isDithered) {
            return "Both lie in the page with 24 bits, every sample as in its file.";
        }
        String which =
                facts.a().isDithered() && facts.b().isDithered()
                        ? "both are"
                        : (facts.a().isDithered() ? "A is" : "B is");
        return "Both lie in the page with 24 bits; "
                + which
                + " dithered to that (triangular, some 140 dB below full scale).";
    }

    private static void clipped(ListenSound sound, String name, List<String> out) {
        if (sound.clippedPlaces() > 0) {
            out.add(
                    text(
                            "%s is clipped at %d %s of this part, which may tell it apart.",
                            name,
                            sound.clippedPlaces(),
                            sound.clippedPlaces() == 1 ? "place" : "places"));
        }
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
