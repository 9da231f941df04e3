package offtape.cli.guide;

import java.util.Arrays;
import java.util.Optional;
import offtape.cli.terminal.Terminal;
import offtape.core.text.Phrases;
import offtape.core.unit.TapeSpeed;

/**
 * Asks what kind of machine it is.
 *
 * @param phrases what the guide says
 */
record MachineQuestions(Terminal terminal, Phrases phrases) {

    private static final String SPEED = "19.05cm/s";
    private static final String FULL = "full";
    private static final String BRIEF = "short";

    /** What was answered; empty if the questions were broken off or an answer makes no sense. */
    Optional<Answers> ask(Answers before) {
        Optional<String> name =
                terminal.answer(phrases.say("guide.name"), phrases.say("guide.usual-name"));
        Optional<Heads> heads = name.flatMap(n -> heads());
        Optional<String> speed =
                heads.flatMap(h -> terminal.answer(phrases.say("guide.tape-speed"), SPEED))
                        .filter(this::isSpeed);
        Optional<String> length =
                speed.flatMap(s -> terminal.answer(phrases.say("guide.length"), FULL));
        return length.map(
                l ->
                        before.withMachine(
                                name.get(), heads.get(), speed.get(), l.equalsIgnoreCase(BRIEF)));
    }

    private boolean isSpeed(String text) {
        try {
            TapeSpeed.parse(text);
            return true;
        } catch (IllegalArgumentException e) {
            terminal.message(phrases.told(e.getMessage()));
            return false;
        }
    }

    private Optional<Heads> heads() {
        for (Heads h : Heads.values()) {
            terminal.message("  " + number(h) + "  " + phrases.say("guide.heads-" + h.mode()));
        }
        return terminal.answer(phrases.say("guide.which"), number(Heads.THREE))
                .flatMap(
                        a ->
                                Arrays.stream(Heads.values())
                                        .filter(h -> a.equals(number(h)))
                                        .findFirst());
    }

    private static String number(Heads heads) {
        return Integer.toString(heads.ordinal() + 1);
    }
}
