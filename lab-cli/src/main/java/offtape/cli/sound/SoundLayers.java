package offtape.cli.sound;

import java.util.List;

/**
 * The ways to sound devices that there are.
 *
 * @param all the one that is used if none is named comes first
 */
public record SoundLayers(List<SoundLayer> all) {

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
                                        "There is no sound layer \""
                                                + name
                                                + "\" here; there are: "
                                                + String.join(
                                                        ", ",
                                                        all.stream().map(SoundLayer::name).toList())
                                                + "."));
    }
}
