package offtape.report.render;

import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds what a page in another language still says in English. */
final class EnglishLeft {

    private static final Pattern ENGLISH =
            Pattern.compile("\\b(the|of|and|is|with|from|no|not|than|which|unknown)\\b");

    /** What a reader sees or hears: the text between tags, and names that screen readers tell. */
    private static final Pattern TEXT = Pattern.compile(">([^<]+)<|aria-label=\"([^\"]+)\"");

    private EnglishLeft() {}

    /** The texts of a page that have English words in them. */
    static List<String> in(String page) {
        Matcher text = TEXT.matcher(page.replaceAll("(?s)<(script|style)\\b.*?</\\1>", ""));
        return text.results().flatMap(EnglishLeft::groups).filter(EnglishLeft::isLeft).toList();
    }

    /** The lines of a plain text that have English words in them. */
    static List<String> inText(String text) {
        return text.lines().filter(EnglishLeft::isLeft).toList();
    }

    private static Stream<String> groups(MatchResult found) {
        return Stream.of(found.group(1) == null ? found.group(2) : found.group(1));
    }

    private static boolean isLeft(String text) {
        return ENGLISH.matcher(text).find();
    }
}
