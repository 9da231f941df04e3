package offtape.report.render;

import java.util.List;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;

/** What the set-up sheet says; short, since all of it goes on one page. */
final class SetUpWords {

    private SetUpWords() {}

    static final List<String> CAUTIONS =
            List.of(
                    "Loudspeakers off, headphones off the ears: the programme holds loud steady"
                            + " tones up to 20 kHz.",
                    "Mains voltage is present inside an opened machine, in some when switched off"
                            + " too. Leave opening and adjusting to people licensed for it, by the"
                            + " rules of the place.",
                    "Keep hair, sleeves and fingers away from moving reels and the pinch roller.",
                    "Keep the demagnetiser and loudspeaker magnets away from all tapes.",
                    "Lock record out before a calibration tape goes on.");

    static final List<String> CLEAN =
            List.of(
                    "Take the tape off; switch the machine off.",
                    "Heads, guides and capstan with a cleaner for metal, the pinch roller with one"
                            + " that spares rubber; no liquid into bearings. Let all dry.",
                    "Demagnetise last, all tapes some metres away, the machine off: switch on at"
                            + " arm\u2019s length, come near slowly, pass along heads and guides without"
                            + " touching, draw back slowly, switch off at arm\u2019s length.",
                    "Machine on, a quarter of an hour to warm up, then the tape.");

    static final List<String> SWITCH_OFF =
            List.of(
                    "Machine: noise reduction, limiter or automatic level, tone controls, pitch"
                            + " control, echo, sound on sound.",
                    "Mixer and interface: equaliser, low cut, limiter, effects, automatic gain.",
                    "Workstation: input monitoring to loudspeakers (it feeds the return back),"
                            + " plug-ins, normalising, stretching, sounds of the system.");

    static final List<List<String>> WIRING =
            List.of(
                    List.of("Interface outputs, left and right", "machine line inputs"),
                    List.of("Machine line outputs", "interface line inputs, left and right"));

    static final String WIRING_NOTE =
            "Line level throughout, no microphone input, left to left. If it hums, feed both from"
                    + " one mains socket.";

    static final List<List<String>> MODES =
            List.of(
                    List.of(
                            "Three heads",
                            "off-tape",
                            "Record, monitor switched to tape; play the programme and record its"
                                    + " return at the same moment."),
                    List.of(
                            "Two heads",
                            "two-pass",
                            "Counter to 0, record the programme, rewind, replay into the computer;"
                                    + " best three times, each from its start."),
                    List.of(
                            "Replay only",
                            "reference-tape",
                            "Only the machine\u2019s outputs are connected; replay a tape that was"
                                    + " recorded on a machine you trust."),
                    List.of(
                            "No machine",
                            "loopback",
                            "Interface outputs straight into its inputs, once: what the interface"
                                    + " adds is then taken out of later sessions."));

    /** How the levels of a programme are set. */
    static List<String> levels(CueSheet sheet) {
        double reference =
                sheet.cues(Cue.Tone.class)
                        .filter(t -> t.id().equals("reference"))
                        .mapToDouble(Cue.Tone::frequencyHz)
                        .findFirst()
                        .orElse(1000);
        String sent = Numbers.withUnit(Numbers.decimal(sheet.referenceDbfs(), 1), "dBFS");
        return List.of(
                "Run \u201cofftape lineup --programme FOLDER\u201d: it sends a tone at "
                        + sent
                        + " and says what to turn. The programme\u2019s reference tone has "
                        + Numbers.frequency(reference)
                        + ".",
                "Record level: turn until the machine\u2019s meters stand at their 0 mark, both"
                        + " channels alike.",
                "Replay level, then input gain: until the tone comes back near "
                        + sent
                        + ". The loudest tone is "
                        + Numbers.withUnit(Numbers.decimal(sheet.loudestDb(), 0), "dB")
                        + " above it; input and output must not clip there.",
                "From now on turn nothing. Record from before the first marker to after the last.");
    }
}
