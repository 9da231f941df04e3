package offtape.report.render;

import offtape.core.text.Language;

/** Whom the pages of tests are for. */
final class Reader {

    /** Somebody who reads English. */
    static final Wording ENGLISH = Wording.in(Language.ENGLISH);

    /** Somebody who reads German. */
    static final Wording GERMAN = Wording.in(Language.GERMAN);

    private Reader() {}
}
