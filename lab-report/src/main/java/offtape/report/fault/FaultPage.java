package offtape.report.fault;

import java.util.ArrayList;
import java.util.List;
import offtape.core.text.Sentences;

/**
 * What is known of one fault, in the order in which somebody at the machine reads it.
 *
 * @param title what the trade calls it
 * @param facts what kind of fault it is, one sentence each
 * @param sections headed parts, none empty
 */
public record FaultPage(String title, List<String> facts, List<Section> sections) {

    private static final Sentences SAID = Sentences.near(FaultPage.class);

    /** Copies the lists so that the record cannot change. */
    public FaultPage {
        facts = List.copyOf(facts);
        sections = List.copyOf(sections);
    }

    /**
     * A headed part.
     *
     * @param heading a few words
     * @param sentences paragraphs, each of plain sentences
     * @param entries named entries below them
     */
    public record Section(String heading, List<String> sentences, List<Entry> entries) {

        /** Copies the lists so that the record cannot change. */
        public Section {
            sentences = List.copyOf(sentences);
            entries = List.copyOf(entries);
        }
    }

    /**
     * A named entry.
     *
     * @param name what it is about
     * @param code of the fault it is about, or null if it is about a figure
     * @param words what is said of it
     */
    public record Entry(String name, String code, String words) {}

    /** The page of a fault of which no typical changes were learned. */
    public static FaultPage of(FaultNote note) {
        return of(note, List.of());
    }

    /**
     * The page of a fault.
     *
     * @param rows how it typically moves the figures; the part is left out if there are none
     */
    public static FaultPage of(FaultNote note, List<SignatureRow> rows) {
        List<Section> sections = new ArrayList<>();
        sections.add(section(SAID.say("page.does"), FaultWords.moves(note)));
        sections.add(section(SAID.say("page.signature"), note.signature()));
        if (!rows.isEmpty()) {
            sections.add(
                    new Section(
                            SAID.say("page.moves"),
                            List.of(),
                            rows.stream()
                                    .map(r -> new Entry(r.figure(), null, r.change()))
                                    .toList()));
        }
        sections.add(new Section(SAID.say("page.unlike"), List.of(), lookAlikes(note)));
        sections.add(new Section(SAID.say("page.cautions"), FaultWords.cautions(note), List.of()));
        sections.add(section(SAID.say("page.first"), note.first()));
        sections.add(section(SAID.say("page.repair"), note.repair(), FaultWords.effort(note)));
        sections.add(section(SAID.say("page.gain"), note.gain()));
        sections.add(section(SAID.say("page.confirm"), note.confirm()));
        sections.add(section(SAID.say("page.source"), FaultWords.source(note)));
        return new FaultPage(
                note.name(), List.of(FaultWords.channels(note), FaultWords.modes(note)), sections);
    }

    private static Section section(String heading, String... sentences) {
        return new Section(heading, List.of(sentences), List.of());
    }

    private static List<Entry> lookAlikes(FaultNote note) {
        return note.unlike().stream()
                .map(u -> new Entry(FaultCatalogue.of(u.code()).name(), u.code(), u.words()))
                .toList();
    }
}
