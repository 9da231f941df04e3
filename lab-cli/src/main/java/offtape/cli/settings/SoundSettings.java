package offtape.cli.settings;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * The devices used last. Members are null where none was chosen.
 *
 * @param layer the way to the devices
 * @param output device that plays
 * @param outputChannels its channels, such as {@code 5,6}
 * @param input device that records
 * @param inputChannels its channels
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SoundSettings(
        String layer, String output, String outputChannels, String input, String inputChannels) {

    /** Nothing chosen. */
    public static final SoundSettings NONE = new SoundSettings(null, null, null, null, null);
}
