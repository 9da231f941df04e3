package offtape.cli.sound;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import javax.sound.sampled.Mixer;
import offtape.core.text.Sentences;

/**
 * Finds a device by what a user calls it.
 *
 * @param devices those that come into question
 * @param verb what they do, as in "a device that plays"
 */
record DeviceChoice(List<Mixer> devices, String verb) {

    private static final Sentences SAID = Sentences.near(DeviceChoice.class);

    /**
     * The device of exactly that name, else the only one that has it as a part of its name: names
     * are long and hold numbers that change.
     *
     * @throws SoundTroubleException if there is none, or more than one
     */
    Mixer named(String name) {
        return devices.stream()
                .filter(d -> d.getMixerInfo().getName().equals(name))
                .findFirst()
                .orElseGet(() -> like(name));
    }

    private Mixer like(String name) {
        String part = lowerCase(name);
        List<Mixer> like =
                devices.stream()
                        .filter(d -> lowerCase(d.getMixerInfo().getName()).contains(part))
                        .toList();
        if (like.size() == 1) {
            return like.get(0);
        }
        throw new SoundTroubleException(like.isEmpty() ? none(name) : several(name, like));
    }

    private static String lowerCase(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    private String none(String name) {
        return SAID.say("no-such-device", name, SAID.say(verb));
    }

    private String several(String name, List<Mixer> like) {
        String names =
                like.stream()
                        .map(d -> "\"" + d.getMixerInfo().getName() + "\"")
                        .collect(Collectors.joining(", "));
        return SAID.say("several-devices", name, SAID.say(verb), names);
    }
}
