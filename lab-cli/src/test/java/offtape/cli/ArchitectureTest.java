package offtape.cli;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.FileDescriptor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules of the house: which package may know which, and what belongs to one package alone. */
final class ArchitectureTest {

    /** Fewer classes than the project has, many more than one module has. */
    private static final int FLOOR = 250;

    private static final JavaClasses CLASSES =
            new ClassFileImporter()
                    .withImportOption(new ImportOption.DoNotIncludeTests())
                    .importPackages("offtape");

    @Test
    void theClassesOfAllModulesAreSeen() {
        assertTrue(CLASSES.size() >= FLOOR, () -> "only " + CLASSES.size() + " classes were seen");
    }

    /** An import that misses a package would let each rule about it pass. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "offtape.cli.command",
                "offtape.cli.sound.portaudio",
                "offtape.cli.terminal",
                "offtape.core.audio",
                "offtape.core.dsp",
                "offtape.core.standard",
                "offtape.reference",
                "offtape.report.measure",
                "offtape.report.render"
            })
    void thePackagesThatRulesNameExist(String name) {
        assertTrue(CLASSES.containPackage(name));
        assertTrue(CLASSES.getPackage(name).getClasses().size() > 2);
    }

    @Test
    void modulesAreStoreysAndKnowOnlyThoseBelow() {
        layeredArchitecture()
                .consideringOnlyDependenciesInLayers()
                .layer("cli")
                .definedBy("offtape.cli..")
                .layer("report")
                .definedBy("offtape.report..")
                .layer("core")
                .definedBy("offtape.core..")
                .layer("reference")
                .definedBy("offtape.reference..")
                .whereLayer("cli")
                .mayNotBeAccessedByAnyLayer()
                .whereLayer("report")
                .mayOnlyBeAccessedByLayers("cli")
                .whereLayer("core")
                .mayOnlyBeAccessedByLayers("cli", "report")
                .whereLayer("reference")
                .mayOnlyBeAccessedByLayers("cli", "report", "core")
                .check(CLASSES);
    }

    @Test
    void packagesFormNoCycle() {
        slices().matching("offtape.(**)").should().beFreeOfCycles().check(CLASSES);
    }

    @Test
    void standardStreamsAreUsedInTheTerminalPackageOnly() {
        noClasses()
                .that(not(resideInAPackage("offtape.cli.terminal..")))
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .orShould()
                .accessField(System.class, "in")
                .orShould()
                .callMethod(System.class, "console")
                .orShould()
                .callMethod(Throwable.class, "printStackTrace")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(FileDescriptor.class)
                .check(CLASSES);
    }

    @Test
    void onlyTheEntryPointEndsTheProcess() {
        noClasses()
                .that()
                .doNotHaveFullyQualifiedName("offtape.cli.Main")
                .should()
                .callMethod(System.class, "exit", int.class)
                .check(CLASSES);
    }

    @Test
    void transformsOfTheLibraryStayInDsp() {
        only("offtape.core.dsp..", "org.jtransforms..", "org.visnow..", "pl.edu.icm..");
    }

    @Test
    void chartsOfTheLibraryAndDrawingStayInRender() {
        only("offtape.report.render..", "org.knowm..", "java.awt..", "javax.swing..");
    }

    @Test
    void argumentsAreParsedInTheCommandsOnly() {
        only("offtape.cli..", "picocli..");
    }

    @Test
    void theScreenAndKeysOfTheLibraryStayInTheTerminalPackage() {
        only("offtape.cli.terminal..", "org.jline..");
    }

    @Test
    void nativeLibrariesAreCalledFromOnePackageOnly() {
        only("offtape.cli.sound.portaudio..", "com.sun.jna..");
    }

    @Test
    void signalsAndStandardsKnowNoJson() {
        noClasses()
                .that(
                        resideInAnyPackage(
                                "offtape.core.dsp..",
                                "offtape.core.standard..",
                                "offtape.core.audio.."))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("com.fasterxml..")
                .check(CLASSES);
    }

    @Test
    void noStaticStateChanges() {
        fields().that().areStatic().should().haveModifier(JavaModifier.FINAL).check(CLASSES);
    }

    @Test
    void noClassIsADrawer() {
        noClasses().should().haveNameMatching(".*(Utils?|Utilities|Helpers?)").check(CLASSES);
    }

    private static void only(String owner, String... foreign) {
        noClasses()
                .that(not(resideInAPackage(owner)))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(foreign)
                .check(CLASSES);
    }
}
