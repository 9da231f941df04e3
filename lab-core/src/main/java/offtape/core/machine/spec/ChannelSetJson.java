package offtape.core.machine.spec;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.SerializerProvider;
import java.io.IOException;
import offtape.core.programme.ChannelSet;
import offtape.core.text.Sentences;

/** Channels by the names they have in cue sheets. */
final class ChannelSetJson {

    private static final Sentences SAID = Sentences.near(ChannelSetJson.class);

    private ChannelSetJson() {}

    static final class Writer extends JsonSerializer<ChannelSet> {
        @Override
        public void serialize(ChannelSet set, JsonGenerator out, SerializerProvider provider)
                throws IOException {
            out.writeString(set.key());
        }
    }

    static final class Reader extends JsonDeserializer<ChannelSet> {
        @Override
        public ChannelSet deserialize(JsonParser in, DeserializationContext context)
                throws IOException {
            String key = in.getValueAsString();
            for (ChannelSet set : ChannelSet.values()) {
                if (set.key().equals(key)) {
                    return set;
                }
            }
            throw JsonMappingException.from(
                    in,
                    "unknown channel",
                    new offtape.core.fault.UnusableInputException(SAID.say("channel")));
        }
    }
}
