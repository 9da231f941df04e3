package offtape.core.machine.spec;

import com.fasterxml.jackson.databind.module.SimpleModule;
import java.nio.file.Path;
import offtape.core.fault.UnusableInputException;
import offtape.core.json.StrictJson;
import offtape.core.programme.ChannelSet;
import offtape.core.text.Sentences;

/** Reads and writes machine descriptions, with refusals in words that name the place. */
final class SpecJson {

    private static final Sentences SAID = Sentences.near(SpecJson.class);

    private static final StrictJson<MachineSpec> JSON =
            new StrictJson<>(MachineSpec.class, SAID.say("a-description"), channels());

    private SpecJson() {}

    static MachineSpec read(Path file) {
        return resolved(JSON.read(file), file);
    }

    static MachineSpec read(String text, String from) {
        return JSON.read(text, from);
    }

    static String write(MachineSpec spec) {
        return JSON.write(spec);
    }

    private static MachineSpec resolved(MachineSpec spec, Path file) {
        MotionFileSpec motion = spec.transport().motion();
        if (motion == null || motion.csv() == null) {
            return spec;
        }
        try {
            String csv = file.resolveSibling(motion.csv()).toString();
            MotionFileSpec found = new MotionFileSpec(csv, null, motion.scale());
            return spec.withTransport(spec.transport().withMotion(found));
        } catch (java.nio.file.InvalidPathException e) {
            throw new UnusableInputException(SAID.say("motion.no-path", file), e);
        }
    }

    private static SimpleModule channels() {
        SimpleModule channels = new SimpleModule();
        channels.addSerializer(ChannelSet.class, new ChannelSetJson.Writer());
        channels.addDeserializer(ChannelSet.class, new ChannelSetJson.Reader());
        return channels;
    }
}
