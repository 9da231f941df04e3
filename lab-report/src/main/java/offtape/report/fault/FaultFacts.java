package offtape.report.fault;

import java.util.List;
import offtape.core.text.Texts;

/**
 * What is known of a fault without its words, as its file holds it.
 *
 * @param code its name in results
 * @param channels {@code machine} or {@code channel}: what can have it
 * @param modes capture modes that can show it
 * @param moves figures that it worsens, or null for none
 * @param unlike codes of the faults that look like it
 * @param effort what kind of work mends it
 * @param cautions what to take care of in that work
 */
record FaultFacts(
        String code,
        String channels,
        List<String> modes,
        List<String> moves,
        List<String> unlike,
        String effort,
        List<String> cautions) {

    /** The whole, with its words. */
    FaultNote note(Texts texts) {
        return new FaultNote(
                code,
                texts.say(code + ".name"),
                channels,
                modes,
                moves,
                texts.say(code + ".signature"),
                texts.say(code + ".source"),
                unlike.stream()
                        .map(
                                other ->
                                        new FaultNote.LookAlike(
                                                other, texts.say(code + ".unlike." + other)))
                        .toList(),
                texts.say(code + ".first"),
                texts.say(code + ".repair"),
                effort,
                texts.say(code + ".gain"),
                texts.say(code + ".confirm"),
                cautions);
    }
}
