package offtape.cli;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleNameContaining;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.FileDescriptor;
import java.io.FileReader;
import java.io.FileWriter;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.ObjectInputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.channels.spi.SelectorProvider;
import java.nio.charset.Charset;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Random;
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

    /** JSON may come from anybody; its bounds are set in one place. The tables are our own. */
    @Test
    void mappersAreMadeInOnePlaceAndNoTextChoosesAClass() {
        noClasses()
                .that(not(resideInAnyPackage("offtape.core.json..", "offtape.reference..")))
                .should()
                .callConstructor(ObjectMapper.class)
                .orShould()
                .callConstructor(JsonMapper.class)
                .orShould()
                .callMethod(JsonMapper.class, "builder")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(JsonFactory.class)
                .check(CLASSES);
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("com.fasterxml.jackson.databind.jsontype..")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(JsonTypeInfo.class)
                .orShould()
                .callMethodWhere(
                        target(name("activateDefaultTyping"))
                                .or(target(name("enableDefaultTyping"))))
                .check(CLASSES);
    }

    /** Neither out nor in: nothing is asked for over a network, and nothing listens. */
    @Test
    void nothingTouchesANetwork() {
        noNetwork().check(CLASSES);
        for (Class<?> careless : List.of(Listener.class, Asker.class, Channel.class)) {
            JavaClasses one = new ClassFileImporter().importClasses(careless);
            assertThrows(AssertionError.class, () -> noNetwork().check(one), careless::getName);
        }
    }

    private static ArchRule noNetwork() {
        return noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.net..",
                        "javax.net..",
                        "java.rmi..",
                        "javax.naming..",
                        "com.sun.net..",
                        "javax.management.remote..",
                        "java.nio.channels.spi..")
                .orShould()
                .dependOnClassesThat(
                        simpleNameContaining("Socket").and(resideInAPackage("java.nio..")));
    }

    /** What the rule is there to find. */
    private static final class Listener {
        ServerSocket opened() throws IOException {
            return new ServerSocket(0);
        }
    }

    private static final class Asker {
        InputStream asked(String address) throws IOException {
            return URI.create(address).toURL().openStream();
        }
    }

    private static final class Channel {
        Object opened() throws IOException {
            return SelectorProvider.provider().openServerSocketChannel();
        }
    }

    /** What a foreign stream says is data: it becomes no object, and no code. */
    @Test
    void nothingIsReadAsAnObjectOrLoadedAsCode() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .areAssignableTo(ObjectInputStream.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(ClassLoader.class)
                .orShould()
                .callMethod(Class.class, "forName", String.class)
                .orShould()
                .dependOnClassesThat()
                .resideInAnyPackage("javax.script..")
                .check(CLASSES);
    }

    /**
     * The same input gives the same output whatever the country, the clock, the system and the
     * release of Java: from 24 on some functions of Math are computed in another way than before,
     * within the error it allows; those of StrictMath are the same everywhere.
     */
    @Test
    void nothingHangsOnWhereItRuns() {
        noClasses()
                .should()
                .callMethod(String.class, "format", String.class, Object[].class)
                .orShould()
                .callMethod(String.class, "formatted", Object[].class)
                .orShould()
                .callMethod(PrintStream.class, "printf", String.class, Object[].class)
                .orShould()
                .callMethod(String.class, "toLowerCase")
                .orShould()
                .callMethod(String.class, "toUpperCase")
                .orShould()
                .callMethod(String.class, "getBytes")
                .orShould()
                .callConstructor(String.class, byte[].class)
                .orShould()
                .callConstructor(InputStreamReader.class, InputStream.class)
                .orShould()
                .callConstructor(PrintStream.class, OutputStream.class)
                .orShould()
                .callConstructor(PrintStream.class, OutputStream.class, boolean.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(FileReader.class)
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(FileWriter.class)
                .orShould()
                .callMethod(Charset.class, "defaultCharset")
                .orShould()
                .callMethod(Locale.class, "getDefault")
                .orShould()
                .callMethod(ZoneId.class, "systemDefault")
                .orShould()
                .callMethod(DateTimeFormatter.class, "ofPattern", String.class)
                .orShould()
                .callMethod(LocalDate.class, "now")
                .orShould()
                .callMethod(System.class, "lineSeparator")
                .orShould()
                .callMethod(Math.class, "random")
                .orShould()
                .callMethod(Math.class, "tanh", double.class)
                .orShould()
                .callMethod(Math.class, "sinh", double.class)
                .orShould()
                .callMethod(Math.class, "cosh", double.class)
                .orShould()
                .callMethod(Math.class, "cbrt", double.class)
                .orShould()
                .callConstructor(Random.class)
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
