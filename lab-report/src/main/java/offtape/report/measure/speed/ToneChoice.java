package offtape.report.measure.speed;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;
import offtape.report.measure.tone.FoundTone;
import offtape.report.measure.tone.ToneSearch;

/** Which of the tones in a recording is read, and what is to be said about the others. */
final class ToneChoice {

    private static final Sentences SAID = Sentences.near(ToneChoice.class);

    /** Speed errors up to a fifth with some room, once the frequency is named. */
    private static final double MEANT = 0.25;

    private static final double SHORTEST_S = 5;
    private static final double SAME_TONE = 0.05;

    /** A second tone within the band that is demodulated reads as flutter from here on, dB. */
    private static final double DISTURBING_DB = -30;

    private static final double HEARD_DB = -40;
    private static final double FADED_DB = 6;

    private final ToneSearch search;
    private final OptionalDouble named;
    private final String file;
    private final FoundTone tone;
    private final double nominalHz;

    private ToneChoice(ToneSearch search, OptionalDouble named, String file) {
        this.search = search;
        this.named = named;
        this.file = file;
        this.tone = chosen().orElseThrow(this::noTone);
        this.nominalHz = named.orElseGet(this::nearest);
        refuseMixture();
    }

    /**
     * Chooses.
     *
     * @param named the frequency the tone should have, or empty
     * @param file name of the recording for messages
     * @throws UnusableInputException if none can be read
     */
    static ToneChoice from(ToneSearch search, OptionalDouble named, String file) {
        return new ToneChoice(search, named, file);
    }

    /** The stretch to read. */
    FoundTone tone() {
        return tone;
    }

    /** The frequency it should have. */
    double nominalHz() {
        return nominalHz;
    }

    private Optional<FoundTone> chosen() {
        List<FoundTone> whole =
                search.tones().stream().filter(t -> t.seconds() >= SHORTEST_S).toList();
        if (named.isPresent()) {
            return longest(
                    whole.stream().filter(t -> t.isNear(named.getAsDouble(), MEANT)).toList());
        }
        return longest(whole.stream().filter(UsualTones::isForFlutter).toList())
                .or(() -> longest(whole.stream().filter(ToneChoice::isUsual).toList()))
                .or(() -> longest(whole));
    }

    private static boolean isUsual(FoundTone t) {
        return UsualTones.nearest(t.frequencyHz()).isPresent();
    }

    private static Optional<FoundTone> longest(List<FoundTone> tones) {
        return tones.stream().max(Comparator.comparingDouble(FoundTone::seconds));
    }

    private double nearest() {
        return UsualTones.nearest(tone.frequencyHz())
                .orElseThrow(() -> new UnusableInputException(odd()));
    }

    private String odd() {
        List<String> said = new ArrayList<>();
        said.add(SAID.say("odd-tone", file, tone.frequencyHz()));
        UsualTones.guess(tone.frequencyHz()).ifPresent(said::add);
        said.add(SAID.say("odd-tone-remedy"));
        return String.join(" ", said);
    }

    private void refuseMixture() {
        double apart = Math.abs(tone.secondHz() - tone.frequencyHz());
        boolean inBand = apart < ToneBand.of(tone.frequencyHz()).stopHz();
        if (inBand && tone.secondDb() > DISTURBING_DB) {
            throw new UnusableInputException(
                    SAID.say("mixture", tone.secondHz(), tone.frequencyHz(), file));
        }
    }

    /** Why nothing can be read. */
    UnusableInputException noTone() {
        List<String> said = new ArrayList<>();
        said.add(
                named.isEmpty()
                        ? SAID.say("none-usual", file)
                        : SAID.say("none-named", named.getAsDouble(), file));
        instead().ifPresent(said::add);
        said.add(SAID.say("record-alone"));
        return new UnusableInputException(String.join(" ", said));
    }

    private Optional<String> instead() {
        Optional<FoundTone> pair = longest(search.pairs());
        if (pair.isPresent() && pair.get().seconds() >= SHORTEST_S) {
            return Optional.of(
                    SAID.say("two-at-once", pair.get().frequencyHz(), pair.get().secondHz()));
        }
        return longest(search.tones()).map(t -> SAID.say("longest", t.frequencyHz(), t.seconds()));
    }

    /** What a technician should know of the recording, plain sentences. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        if (named.isEmpty()) {
            UsualTones.doubt(tone.frequencyHz(), nominalHz).ifPresent(notes::add);
        }
        stretches().ifPresent(notes::add);
        others().ifPresent(notes::add);
        if (tone.secondDb() > HEARD_DB) {
            notes.add(SAID.say("sounds-along", tone.secondHz(), -tone.secondDb()));
        }
        if (tone.fadeDb() > FADED_DB) {
            notes.add(SAID.say("fades", tone.toSeconds(), tone.fadeDb()));
        }
        return notes;
    }

    private Optional<String> stretches() {
        List<FoundTone> same =
                search.tones().stream()
                        .filter(t -> t.isNear(tone.frequencyHz(), SAME_TONE))
                        .toList();
        if (same.size() == 1) {
            return Optional.empty();
        }
        return Optional.of(
                SAID.say("stretches", same.size(), tone.fromSeconds(), tone.toSeconds()));
    }

    private Optional<String> others() {
        Set<String> heard = new LinkedHashSet<>();
        search.tones().stream()
                .filter(t -> !t.isNear(tone.frequencyHz(), SAME_TONE))
                .forEach(t -> heard.add(String.format(Locale.ROOT, "%.0f Hz", t.frequencyHz())));
        if (heard.isEmpty()) {
            return Optional.empty();
        }
        List<String> some = heard.stream().limit(6).toList();
        return Optional.of(
                SAID.say(
                        heard.size() > some.size() ? "others-and-more" : "others",
                        String.join(", ", some)));
    }
}
