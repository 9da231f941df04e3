package offtape.report.apply.correct;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import offtape.core.fault.BoundedText;
import offtape.core.fault.UnusableInputException;
import offtape.core.text.Sentences;

/**
 * The response that is wanted, dB re 1 kHz, from a table of frequency and level that people write:
 * a row each, comma or semicolon between, lines that begin with # and one line of heads passed
 * over. Between its points it is straight over the logarithm of frequency, beyond them level.
 */
final class TargetCurve {

    private static final Sentences SAID = Sentences.near(TargetCurve.class);

    private static final Pattern NUMBER =
            Pattern.compile("[-+]?[0-9]+(\\.[0-9]+)?([eE][-+]?[0-9]+)?");

    private static final int MOST_BYTES = 1 << 20;
    private static final int MOST_ROWS = 10_000;
    private static final double MOST_DB = 40;
    private static final double LOWEST_HZ = 1;
    private static final double HIGHEST_HZ = 200_000;

    private final Path file;
    private final List<double[]> rows = new ArrayList<>();

    private TargetCurve(Path file) {
        this.file = file;
    }

    /** A return as flat as can be. */
    static Curve flat() {
        return new Curve(new double[] {1000}, new double[] {0});
    }

    /**
     * Reads one.
     *
     * @throws UnusableInputException if it is none, with the line
     */
    static Curve read(Path file) {
        return new TargetCurve(file).parsed(lines(file));
    }

    private static List<String> lines(Path file) {
        try {
            return BoundedText.read(file, MOST_BYTES)
                    .orElseThrow(
                            () -> new UnusableInputException(SAID.say("target.too-large", file)))
                    .lines()
                    .toList();
        } catch (CharacterCodingException e) {
            throw new UnusableInputException(SAID.say("target.not-utf8", file), e);
        } catch (IOException e) {
            throw new UnusableInputException(SAID.say("target.unreadable", file), e);
        }
    }

    private Curve parsed(List<String> lines) {
        boolean headsMayCome = true;
        for (int i = 0; i < lines.size(); i++) {
            String line = (i == 0 ? lines.get(0).replace("\uFEFF", "") : lines.get(i)).strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            String[] cells = line.split("[,;]", -1);
            boolean heads =
                    headsMayCome && cells.length == 2 && isText(cells[0]) && isText(cells[1]);
            headsMayCome = false;
            if (!heads) {
                add(i + 1, cells);
            }
        }
        if (rows.size() < 2) {
            throw new UnusableInputException(
                    SAID.say(rows.isEmpty() ? "target.no-point" : "target.one-point", file));
        }
        return new Curve(
                        rows.stream().mapToDouble(r -> r[0]).toArray(),
                        rows.stream().mapToDouble(r -> r[1]).toArray())
                .unityAt1kHz();
    }

    private static boolean isText(String cell) {
        return cell.chars().anyMatch(Character::isLetter) && !isNumber(cell);
    }

    private static boolean isNumber(String cell) {
        return NUMBER.matcher(cell.strip()).matches();
    }

    private void add(int line, String... cells) {
        if (cells.length != 2 || !isNumber(cells[0]) || !isNumber(cells[1])) {
            throw refusal("target.no-pair", line);
        }
        double hz = Double.parseDouble(cells[0].strip());
        double db = Double.parseDouble(cells[1].strip());
        if (!(hz >= LOWEST_HZ && hz <= HIGHEST_HZ)) {
            throw refusal("target.frequency-range", line);
        }
        if (!(Math.abs(db) <= MOST_DB)) {
            throw new UnusableInputException(
                    SAID.say(
                            "target.level-range",
                            file,
                            line,
                            String.format(Locale.ROOT, "%.4g", db)));
        }
        if (!rows.isEmpty() && hz <= rows.get(rows.size() - 1)[0]) {
            throw refusal("target.not-rising", line);
        }
        if (rows.size() == MOST_ROWS) {
            throw refusal("target.too-many", line);
        }
        rows.add(new double[] {hz, db});
    }

    private UnusableInputException refusal(String key, int line) {
        return new UnusableInputException(SAID.say(key, file, line));
    }
}
