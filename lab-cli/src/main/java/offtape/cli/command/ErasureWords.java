package offtape.cli.command;

import java.util.ArrayList;
import java.util.List;
import offtape.cli.terminal.Terminal;
import offtape.report.result.Erasure;

/** Erasing in words. */
final class ErasureWords {

    /** DIN 45500 part 4, by the table of that name among the reference data: 60 dB at 1 kHz. */
    private static final double LEAST_DB = 60;

    private final Speech speech;

    /** The words spoken on a terminal. */
    ErasureWords(Terminal terminal) {
        this.speech = Speech.of(terminal);
    }

    /** One line a channel and what to do. */
    List<String> lines(List<Erasure> channels) {
        List<String> lines = new ArrayList<>();
        boolean weak = false;
        for (Erasure e : channels) {
            lines.add(line(e));
            weak |= e.erasure().isKnown() && e.erasure().value() < LEAST_DB;
        }
        if (weak) {
            lines.add(speech.say("erasure.weak"));
        }
        return lines;
    }

    private String line(Erasure e) {
        String channel = speech.told(e.channel());
        if (e.erasure().isKnown()) {
            return speech.say(
                    "erasure.weaker",
                    channel,
                    e.frequencyHz(),
                    e.erasure().value(),
                    e.erasure().uncertainty());
        }
        return e.atLeastDb() == null
                ? speech.say("erasure.unknown", channel, speech.told(e.erasure().reason()))
                : speech.say("erasure.at-least", channel, e.frequencyHz(), e.atLeastDb());
    }
}
