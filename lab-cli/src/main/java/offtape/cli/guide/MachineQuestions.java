package offtape.cli.guide;

import java.util.Arrays;
import java.util.Optional;
import offtape.cli.terminal.Terminal;
import offtape.core.unit.TapeSpeed;

/** Asks what kind of machine it is. */
record MachineQuestions(Terminal terminal) {

    private static final String SPEED = "19.05cm/s";
    private static final String FULL = "full";
    private static final String BRIEF = "short";

    /** What was answered; empty if the questions were broken off or an answer makes no sense. */
    Optional<Answers> ask(Answers before) {
        Optional<String> name = terminal.answer("What do you call the machine", "My machine");
        Optional<Heads> heads = name.flatMap(n -> heads());
        Optional<String> speed =
                heads.flatMap(
                                h ->
                                        terminal.answer(
                                                "Tape speed, such as 19.05cm/s or 7.5ips", SPEED))
                        .filter(this::isSpeed);
        Optional<String> length =
                speed.flatMap(
                        s -> terminal.answer("The programme, full or short (a minute)", FULL));
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
            terminal.message(e.getMessage());
            return false;
        }
    }

    private Optional<Heads> heads() {
        for (Heads h : Heads.values()) {
            terminal.message("  " + number(h) + "  " + h.words());
        }
        return terminal.answer("Which of these is it", number(Heads.THREE))
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
