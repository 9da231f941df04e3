package offtape.report.result;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import offtape.core.json.BoundedJson;
import offtape.core.json.JsonLayout;
import offtape.core.unit.Quantity;
import offtape.core.unit.SignificantDigits;

/**
 * Writes results as JSON: a known figure as {@code {"value", "unit", "uncertainty"}}, an unknown
 * one as {@code {"value": null, "reason"}}; numbers rounded to nine significant digits, far below
 * any uncertainty, so that files stay readable. Numbers that are not finite are refused.
 */
public final class ResultsJson {

    private static final int DIGITS = 9;

    private static final ObjectMapper MAPPER = mapper();

    private ResultsJson() {}

    /**
     * The JSON text of results or of any of their records, indented, ending with a line feed.
     *
     * @throws IllegalStateException if a number is not finite
     */
    public static String write(Object results) {
        try {
            return MAPPER.writer(JsonLayout.objects()).writeValueAsString(results) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("results could not be written: " + e.getMessage(), e);
        }
    }

    private static ObjectMapper mapper() {
        SimpleModule module = new SimpleModule();
        module.addSerializer(Quantity.class, new QuantitySerializer());
        module.addSerializer(Double.class, new RoundedDouble());
        module.addSerializer(double.class, new RoundedDouble());
        module.addSerializer(double[].class, new RoundedDoubles());
        // nothing is read by it
        return BoundedJson.mapper(0)
                .addModule(module)
                .disable(SerializationFeature.FAIL_ON_EMPTY_BEANS)
                .build();
    }

    private static double rounded(double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalStateException("a number in the results is not finite");
        }
        return SignificantDigits.rounded(value, DIGITS);
    }

    private static final class QuantitySerializer extends JsonSerializer<Quantity> {
        @Override
        public void serialize(Quantity q, JsonGenerator out, SerializerProvider provider)
                throws IOException {
            out.writeStartObject();
            if (q.isKnown()) {
                out.writeNumberField("value", rounded(q.value()));
                out.writeStringField("unit", q.unit());
                out.writeNumberField("uncertainty", rounded(q.uncertainty()));
            } else {
                out.writeNullField("value");
                out.writeStringField("reason", q.reason());
            }
            out.writeEndObject();
        }
    }

    private static final class RoundedDouble extends JsonSerializer<Double> {
        @Override
        public void serialize(Double value, JsonGenerator out, SerializerProvider provider)
                throws IOException {
            out.writeNumber(rounded(value));
        }
    }

    private static final class RoundedDoubles extends JsonSerializer<double[]> {
        @Override
        public void serialize(double[] values, JsonGenerator out, SerializerProvider provider)
                throws IOException {
            out.writeStartArray();
            for (double value : values) {
                out.writeNumber(rounded(value));
            }
            out.writeEndArray();
        }
    }
}
