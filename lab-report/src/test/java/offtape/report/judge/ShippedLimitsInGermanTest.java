package offtape.report.judge;

import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.stream.Stream;
import offtape.core.text.Language;
import offtape.core.text.Translation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShippedLimitsInGermanTest {

    private static final Translation GERMAN = Translation.to(Language.GERMAN);

    @ParameterizedTest
    @ValueSource(strings = {"din45500-4", "studio-practice", "cassette-practice"})
    void nameSourceAndClausesAreKnown(String name) {
        LimitSet set = LimitSet.of(name);
        Stream.concat(
                        Stream.of(set.name(), set.source()),
                        set.limits().stream().map(Limit::clause).filter(clause -> clause != null))
                .forEach(text -> assertNotEquals(text, GERMAN.of(text)));
    }
}
