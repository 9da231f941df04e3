package offtape.report.render;

import offtape.core.text.Language;

/** What stands before the body of each page, with a policy that allows its own texts alone. */
final class PageHead {

    private PageHead() {}

    /**
     * The beginning of a page up to the end of its head.
     *
     * @param style the style sheet
     * @param allowed further directives of the policy, such as that for a script
     */
    static Markup of(Language language, String title, String style, String... allowed) {
        String[] directives = new String[allowed.length + 1];
        System.arraycopy(allowed, 0, directives, 0, allowed.length);
        directives[allowed.length] = "style-src " + PagePolicy.source(style);
        return new Markup()
                .open("html", "lang", language.code())
                .line()
                .open("head")
                .line()
                .empty("meta", "charset", "utf-8")
                .line()
                .empty(
                        "meta",
                        "http-equiv",
                        "Content-Security-Policy",
                        "content",
                        PagePolicy.nothingBut(directives))
                .line()
                .empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .line()
                .empty("meta", "name", "color-scheme", "content", "light dark")
                .line()
                .element("title", title)
                .line()
                .style(style)
                .line()
                .close("head")
                .line();
    }
}
