package offtape.report.fault;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** How a page is made. */
class FaultPageTest {

    private static final FaultNote BELT = FaultCatalogue.of("belt");

    @Test
    void typicalChangesAreATableWhereThereAreSome() {
        List<SignatureRow> rows = List.of(new SignatureRow("wow | rms", "+0.2 %"));
        String page = FaultMarkdown.page(FaultPage.of(BELT, rows));
        assertTrue(
                page.contains(
                        """

                        ## How it moves the figures

                        | figure | typical change |
                        | --- | --- |
                        | wow \\| rms | +0.2 % |

                        ## What looks like it
                        """),
                page);
        assertFalse(FaultMarkdown.page(FaultPage.of(BELT)).contains("typical change"));
    }

    @Test
    void whatItWorsensIsTold() {
        String page = FaultMarkdown.page(FaultPage.of(BELT));
        assertTrue(page.contains("It worsens the speed deviation and wow and flutter.\n"), page);
        assertTrue(
                FaultMarkdown.page(FaultPage.of(FaultCatalogue.of("dropouts")))
                        .contains("It worsens none of the quantities that limits are set for.\n"));
    }

    @Test
    void cautionsComeBeforeWhatIsDone() {
        String page = FaultMarkdown.page(FaultPage.of(BELT));
        assertTrue(page.indexOf("## Cautions") < page.indexOf("## What to try first"), page);
    }
}
