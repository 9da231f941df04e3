package offtape.core.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import java.io.IOException;
import java.util.stream.DoubleStream;

/**
 * Takes numbers only where a number belongs: not the texts "NaN" and "Infinity", which the library
 * would take, and none that is too large for a double and would become infinite.
 */
final class FiniteNumbers extends SimpleModule {

    private static final long serialVersionUID = 1L;

    FiniteNumbers() {
        addDeserializer(Double.class, new Reader(null));
        addDeserializer(double.class, new Reader(0.0));
        addDeserializer(double[].class, new ListReader());
    }

    private static double finite(JsonParser parser, DeserializationContext context)
            throws IOException {
        JsonToken token = parser.currentToken();
        if (token != JsonToken.VALUE_NUMBER_FLOAT && token != JsonToken.VALUE_NUMBER_INT) {
            context.reportInputMismatch(double.class, "not a number");
        }
        double value = parser.getDoubleValue();
        if (!Double.isFinite(value)) {
            context.reportInputMismatch(double.class, "too large a number");
        }
        return value;
    }

    private static final class Reader extends StdScalarDeserializer<Double> {

        private static final long serialVersionUID = 1L;

        private final Double absent;

        Reader(Double absent) {
            super(Double.class);
            this.absent = absent;
        }

        @Override
        public Double deserialize(JsonParser parser, DeserializationContext context)
                throws IOException {
            return finite(parser, context);
        }

        @Override
        public Double getNullValue(DeserializationContext context) {
            return absent;
        }
    }

    private static final class ListReader extends StdScalarDeserializer<double[]> {

        private static final long serialVersionUID = 1L;

        ListReader() {
            super(double[].class);
        }

        @Override
        public double[] deserialize(JsonParser parser, DeserializationContext context)
                throws IOException {
            if (!parser.isExpectedStartArrayToken()) {
                context.reportInputMismatch(double[].class, "not a list");
            }
            DoubleStream.Builder values = DoubleStream.builder();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                values.add(finite(parser, context));
            }
            return values.build().toArray();
        }
    }
}
