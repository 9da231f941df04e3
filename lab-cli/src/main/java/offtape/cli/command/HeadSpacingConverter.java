package offtape.cli.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Sentences;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a distance of heads such as 32mm or 1.25in, in millimetres. */
final class HeadSpacingConverter implements ITypeConverter<Double> {

    private static final Sentences SAID = Sentences.near(HeadSpacingConverter.class);

    private static final Pattern FORM =
            Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?)\\s*(mm|cm|in)?\\s*");

    private static final double LEAST_MM = 1;
    private static final double MOST_MM = 300;

    @Override
    public Double convert(String value) {
        Matcher m = FORM.matcher(value);
        if (!m.matches()) {
            throw new TypeConversionException(SAID.say("no-head-spacing", value));
        }
        double unit =
                switch (m.group(2) == null ? "mm" : m.group(2)) {
                    case "cm" -> 10;
                    case "in" -> 25.4;
                    default -> 1;
                };
        double mm = unit * Double.parseDouble(m.group(1).replace(',', '.'));
        if (!(mm >= LEAST_MM && mm <= MOST_MM)) {
            throw new TypeConversionException(SAID.say("head-spacing-range"));
        }
        return mm;
    }
}
