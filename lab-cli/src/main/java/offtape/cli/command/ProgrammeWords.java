package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.core.programme.Cue;
import offtape.core.programme.CueSheet;
import offtape.core.programme.ProgrammeSignal;
import offtape.core.unit.Decibels;
import offtape.core.unit.TapeSpeed;

/** A programme's content in words. */
final class ProgrammeWords {

    private final Speech speech;

    /** The words spoken on a terminal. */
    ProgrammeWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** A line about the whole, then one a cue. */
    List<String> of(CueSheet sheet, TapeSpeed speed) {
        List<String> lines = new ArrayList<>();
        double seconds = sheet.seconds(sheet.frames());
        lines.add(
                speech.say(
                        "programme.whole",
                        speech.plain(speed.toString()),
                        (int) seconds / 60,
                        (int) seconds % 60,
                        sheet.sampleRateHz(),
                        sheet.referenceDbfs(),
                        Decibels.ofAmplitude(new ProgrammeSignal(sheet).peak())));
        for (Cue cue : sheet.cues()) {
            lines.add(
                    "  "
                            + speech.say(
                                    "programme.cue",
                                    sheet.seconds(cue.startFrame()),
                                    sheet.seconds(cue.frames()),
                                    speech.told(cue.channels().key()),
                                    content(cue)));
        }
        return lines;
    }

    private String content(Cue cue) {
        if (cue instanceof Cue.Tone t) {
            return speech.say("programme.tone", t.frequencyHz(), t.levelDb());
        }
        if (cue instanceof Cue.Sweep s) {
            return speech.say("programme.sweep", s.startHz(), s.endHz(), s.levelDb());
        }
        if (cue instanceof Cue.Ladder l) {
            List<Cue.Step> steps = l.steps();
            return speech.say(
                    "programme.ladder",
                    l.frequencyHz(),
                    steps.size(),
                    steps.get(0).levelDb(),
                    steps.get(steps.size() - 1).levelDb());
        }
        return cue instanceof Cue.Silence
                ? speech.say("programme.silence")
                : speech.say("programme.marker", cue.id());
    }
}
