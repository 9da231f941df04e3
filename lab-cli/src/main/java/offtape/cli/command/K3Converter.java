package offtape.cli.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import offtape.core.text.Sentences;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a K3 such as 1% or 0.5 %, in percent. */
final class K3Converter implements ITypeConverter<Double> {

    private static final Sentences SAID = Sentences.near(K3Converter.class);

    private static final Pattern FORM = Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?)\\s*%?\\s*");

    @Override
    public Double convert(String value) {
        Matcher m = FORM.matcher(value);
        double percent = m.matches() ? Double.parseDouble(m.group(1).replace(',', '.')) : 0;
        if (!(percent > 0 && percent <= 30)) {
            throw new TypeConversionException(SAID.say("no-k3", value));
        }
        return percent;
    }
}
