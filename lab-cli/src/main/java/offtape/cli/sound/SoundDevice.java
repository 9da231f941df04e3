package offtape.cli.sound;

/**
 * A device as it is listed.
 *
 * @param layer name of the {@link SoundLayer}
 * @param name the name by which it is chosen
 * @param description what the system says of it
 * @param playback what it can play, or null if it cannot
 * @param capture what it can record, or null if it cannot
 */
public record SoundDevice(
        String layer, String name, String description, DeviceSide playback, DeviceSide capture) {}
