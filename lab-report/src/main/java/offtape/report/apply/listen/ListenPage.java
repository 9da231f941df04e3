package offtape.report.apply.listen;

import java.io.BufferedOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import offtape.core.text.Language;
import offtape.report.render.PagePolicy;
import offtape.report.result.ResultsJson;

/**
 * The listening page as one file: frame, style and scripts of the program's own, then what differs
 * from page to page as data that no browser runs. Only the very texts of this program are allowed
 * to run or to style, by their digests.
 */
public final class ListenPage {

    /** The parts of the script; each is about one thing. */
    private static final List<String> SCRIPTS =
            List.of(
                    "chance.js",
                    "words.js",
                    "sound.js",
                    "line.js",
                    "desk.js",
                    "player.js",
                    "trials.js",
                    "memory.js",
                    "export.js",
                    "overview.js",
                    "keys.js",
                    "results.js",
                    "listening.js",
                    "page.js");

    private ListenPage() {}

    /**
     * Writes the page.
     *
     * @param listening what it holds
     * @param file where to; its disk may refuse, which the caller words
     * @param language of the page; the answers that it saves are English in all of them
     */
    public static void write(Listening listening, Path file, Language language) throws IOException {
        ListenTexts texts = new ListenTexts(language);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file))) {
            String script = script(texts);
            text(out, head(texts, script));
            text(out, texts.framed(resource("page.html"), listening.facts()));
            text(out, data("facts-json", "application/json", safe(listening.facts())));
            sound(out, "sound-A", listening.a());
            sound(out, "sound-B", listening.b());
            text(out, "<script>" + script + "</script>\n</body>\n</html>\n");
        }
    }

    private static String head(ListenTexts texts, String script) {
        String style = "\n" + resource("page.css");
        return "<!DOCTYPE html>\n<html lang=\""
                + texts.code()
                + "\">\n<head>\n<meta charset=\"utf-8\">\n"
                + "<meta http-equiv=\"Content-Security-Policy\" content=\""
                + policy(script, style)
                + "\">\n"
                + "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                + "<meta name=\"color-scheme\" content=\"light dark\">\n"
                + "<title>"
                + texts.title()
                + "</title>\n<style>"
                + style
                + "</style>\n</head>\n";
    }

    private static String policy(String script, String style) {
        return PagePolicy.nothingBut(
                "script-src " + PagePolicy.source(script), "style-src " + PagePolicy.source(style));
    }

    private static String script(ListenTexts texts) {
        String start = "(() => {\n'use strict';\nconst TEXTS = " + texts.scriptTexts() + ";\n";
        return SCRIPTS.stream()
                .map(ListenPage::resource)
                .collect(Collectors.joining("\n", start, "})();\n"));
    }

    // names are what users make them: nothing in them may end the element
    private static String safe(ListenFacts facts) {
        return ResultsJson.write(facts.inert())
                .replace("&", "\\u0026")
                .replace("<", "\\u003c")
                .replace(">", "\\u003e");
    }

    private static String data(String id, String type, String content) {
        return "<script type=\"" + type + "\" id=\"" + id + "\">" + content + "</script>\n";
    }

    private static void sound(OutputStream out, String id, Pcm24 sound) throws IOException {
        text(out, "<script type=\"text/plain\" id=\"" + id + "\">");
        try (OutputStream letters = Base64.getEncoder().wrap(new Open(out))) {
            letters.write(sound.bytes());
        }
        text(out, "</script>\n");
    }

    private static void text(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String resource(String name) {
        try (InputStream in = ListenPage.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Stays open when the coder on top of it ends. */
    private static final class Open extends FilterOutputStream {

        Open(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }
}
