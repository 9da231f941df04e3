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

    /**
     * These with others in their place where they are named. Devices belong to a layer and channels
     * to a device: those of another one are not taken over.
     *
     * @param named members are null where nothing was named
     */
    public SoundSettings changedBy(SoundSettings named) {
        boolean sameLayer = named.layer == null || named.layer.equals(layer);
        boolean sameOutput = sameLayer && (named.output == null || named.output.equals(output));
        boolean sameInput = sameLayer && (named.input == null || named.input.equals(input));
        return new SoundSettings(
                first(named.layer, true, layer),
                first(named.output, sameLayer, output),
                first(named.outputChannels, sameOutput, outputChannels),
                first(named.input, sameLayer, input),
                first(named.inputChannels, sameInput, inputChannels));
    }

    private static String first(String named, boolean same, String before) {
        return named == null && same ? before : named;
    }
}
