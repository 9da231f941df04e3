package offtape.cli.sound;

import java.util.List;
import offtape.core.text.Sentences;

/**
 * The ways to sound devices that there are.
 *
 * @param all the one that is used if none is named comes first
 */
public record SoundLayers(List<SoundLayer> all) {

    private static final Sentences SAID = Sentences.near(SoundLayers.class);

    /** Copies the list. */
    public SoundLayers {
        all = List.copyOf(all);
    }

    /**
     * The way of a name, or the usual one.
     *
     * @param name as {@link SoundLayer#name} gives it, or null
     * @throws SoundTroubleException if there is none of that name
     */
    public SoundLayer named(String name) {
        if (name == null) {
            return all.get(0);
        }
        return all.stream()
                .filter(l -> l.name().equals(name))
                .findFirst()
                .orElseThrow(
                        () ->
                                new SoundTroubleException(
                                        SAID.say(
                                                "no-layer",
                                                name,
                                                String.join(
                                                        ", ",
                                                        all.stream()
                                                                .map(SoundLayer::name)
                                                                .toList()))));
    }
}
