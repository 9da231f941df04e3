package offtape.cli.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a K3 such as 1% or 0.5 %, in percent. */
final class K3Converter implements ITypeConverter<Double> {

    private static final Pattern FORM = Pattern.compile("\\s*([0-9]+(?:[.,][0-9]+)?)\\s*%?\\s*");

    @Override
    public Double convert(String value) {
        Matcher m = FORM.matcher(value);
        double percent = m.matches() ? Double.parseDouble(m.group(1).replace(',', '.')) : 0;
        if (!(percent > 0 && percent <= 30)) {
            throw new TypeConversionException(
                    "\"" + value + "\" is no K3 from 0 to 30 %; write 1%, for instance.");
        }
        return percent;
    }
}
