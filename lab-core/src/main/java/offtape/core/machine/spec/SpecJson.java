package offtape.core.machine.spec;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import offtape.core.fault.UnusableInputException;
import offtape.core.programme.ChannelSet;

/** Reads and writes machine descriptions, with refusals in words that name the place. */
final class SpecJson {

    /** More than any description needs; larger files are refused unread. */
    private static final long MOST_BYTES = 1 << 20;

    private static final JsonMapper MAPPER = mapper();

    private SpecJson() {}

    static MachineSpec read(Path file) {
        String text;
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new UnusableInputException(
                        file + " is larger than a machine's description can be (1 MiB).");
            }
            text = Files.readString(file);
        } catch (CharacterCodingException e) {
            throw new UnusableInputException(file + " is not text in UTF-8.", e);
        } catch (IOException e) {
            throw new UnusableInputException(
                    file + " cannot be read. Check that it is there and may be read.", e);
        }
        return resolved(read(text, file.toString()), file);
    }

    static MachineSpec read(String text, String from) {
        try {
            MachineSpec spec = MAPPER.readValue(text, MachineSpec.class);
            if (spec == null) {
                throw new UnusableInputException(from + " holds no object but null.");
            }
            return spec;
        } catch (JsonProcessingException e) {
            throw new UnusableInputException(from + ": " + inWords(e), e);
        }
    }

    static String write(MachineSpec spec) {
        try {
            DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
            printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
            return MAPPER.writer(printer).writeValueAsString(spec) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the description could not be written", e);
        }
    }

    private static MachineSpec resolved(MachineSpec spec, Path file) {
        MotionFileSpec motion = spec.transport().motion();
        if (motion == null || motion.csv() == null) {
            return spec;
        }
        try {
            String csv = file.resolveSibling(motion.csv()).toString();
            TransportSpec t = spec.transport();
            return spec.withTransport(
                    new TransportSpec(
                            t.speedDeviationPercent(),
                            t.driftPercentPerMinute(),
                            t.components(),
                            t.reels(),
                            t.randomFlutter(),
                            t.scrapeFlutter(),
                            new MotionFileSpec(csv, null, motion.scale())));
        } catch (java.nio.file.InvalidPathException e) {
            throw new UnusableInputException(
                    file + ": transport.motion: \"csv\" is not a path of this system.", e);
        }
    }

    private static String inWords(JsonProcessingException e) {
        if (e instanceof UnrecognizedPropertyException unknown) {
            String known =
                    unknown.getKnownPropertyIds().stream()
                            .map(Object::toString)
                            .sorted()
                            .collect(Collectors.joining(", "));
            return "the member \""
                    + shortened(place(unknown))
                    + "\" is not known. Known here: "
                    + known
                    + ".";
        }
        if (e instanceof JsonMappingException mapping) {
            String where = shortened(place(mapping));
            String prefix = where.isEmpty() ? "" : where + ": ";
            for (Throwable t = e; t != null; t = t.getCause()) {
                if (t instanceof UnusableInputException refusal) {
                    return prefix + refusal.getMessage();
                }
            }
            return prefix + "the value is not of the kind that belongs here" + line(e) + ".";
        }
        if (e.getOriginalMessage().startsWith("Duplicate field")) {
            return "a member is there twice" + line(e) + ".";
        }
        return "this is not well-formed JSON" + line(e) + ".";
    }

    private static String place(JsonMappingException e) {
        StringBuilder path = new StringBuilder();
        for (JsonMappingException.Reference step : e.getPath()) {
            if (step.getFieldName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.length() == 0 ? "" : ".").append(step.getFieldName());
            }
        }
        return path.toString();
    }

    private static String shortened(String text) {
        String printable = text.replaceAll("\\p{Cntrl}", "?");
        return printable.length() <= 120 ? printable : printable.substring(0, 120) + "…";
    }

    private static String line(JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        return at == null ? "" : " (line " + at.getLineNr() + ", column " + at.getColumnNr() + ")";
    }

    private static JsonMapper mapper() {
        SimpleModule channels = new SimpleModule();
        channels.addSerializer(ChannelSet.class, new ChannelSetJson.Writer());
        channels.addDeserializer(ChannelSet.class, new ChannelSetJson.Reader());
        return JsonMapper.builder()
                .addModule(channels)
                .serializationInclusion(JsonInclude.Include.NON_NULL)
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT)
                .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
                .build();
    }
}
