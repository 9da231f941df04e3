package offtape.report.render;

import java.util.List;
import java.util.stream.Stream;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.unit.TapeSpeed;

/**
 * What the set-up sheet says; short, since all of it goes on one page.
 *
 * @param words the reader's language
 */
record SetUpWords(Wording words) {

    /** What is written in by hand. */
    List<String> fields() {
        return said(
                "setup.field-machine",
                "setup.field-tape",
                "setup.field-speed",
                "setup.field-date",
                "setup.field-record",
                "setup.field-replay");
    }

    /** What can hurt people or spoil tapes. */
    List<String> cautions() {
        return said(
                "setup.caution-loud",
                "setup.caution-mains",
                "setup.caution-reels",
                "setup.caution-magnets",
                "setup.caution-record");
    }

    /** How the machine is cleaned, step by step. */
    List<String> clean() {
        return said(
                "setup.clean-off",
                "setup.clean-path",
                "setup.clean-demagnetise",
                "setup.clean-warm");
    }

    /** What would falsify figures. */
    List<String> switchOff() {
        return said("setup.off-machine", "setup.off-mixer", "setup.off-workstation");
    }

    /** Cables, each from where to where. */
    List<List<String>> wiring() {
        return List.of(
                said("setup.wiring-send", "setup.wiring-send-to"),
                said("setup.wiring-return", "setup.wiring-return-to"));
    }

    /** Each kind of machine, its capture mode and how it is recorded. */
    List<List<String>> modes() {
        return Stream.of("off-tape", "two-pass", "reference-tape", "loopback")
                .map(
                        mode ->
                                List.of(
                                        words.say("setup.kind-" + mode),
                                        mode,
                                        words.say("setup.mode-" + mode)))
                .toList();
    }

    /** What the programme is. */
    String programme(CueSheet sheet) {
        long seconds = Math.round(sheet.seconds(sheet.frames()));
        long minutes = seconds / 60;
        String reference = level(sheet.referenceDbfs());
        String loudest = level(sheet.referenceDbfs() + sheet.loudestDb());
        if (sheet.tapeSpeedMmPerS() == null) {
            return words.say(
                    "setup.programme",
                    minutes,
                    seconds % 60,
                    sheet.sampleRateHz(),
                    reference,
                    loudest);
        }
        return words.say(
                "setup.programme-for",
                words.number(new TapeSpeed(sheet.tapeSpeedMmPerS()).toString()),
                minutes,
                seconds % 60,
                sheet.sampleRateHz(),
                reference,
                loudest);
    }

    /** How the levels of a programme are set. */
    List<String> levels(CueSheet sheet) {
        double reference =
                sheet.cues(Cue.Tone.class)
                        .filter(t -> t.id().equals("reference"))
                        .mapToDouble(Cue.Tone::frequencyHz)
                        .findFirst()
                        .orElse(1000);
        String sent = level(sheet.referenceDbfs());
        return List.of(
                words.say("setup.level-send", sent, words.frequency(reference)),
                words.say("setup.level-record"),
                words.say(
                        "setup.level-replay",
                        sent,
                        Numbers.withUnit(words.decimal(sheet.loudestDb(), 0), "dB")),
                words.say("setup.level-keep"));
    }

    private String level(double dbfs) {
        return Numbers.withUnit(words.decimal(dbfs, 1), "dBFS");
    }

    private List<String> said(String... keys) {
        return Stream.of(keys).map(key -> words.say(key)).toList();
    }
}
