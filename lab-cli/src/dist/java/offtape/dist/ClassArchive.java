package offtape.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * An archive of the classes that most commands load, ready to use, which makes each start a good
 * deal quicker. It lies where Java looks for it by itself.
 */
final class ClassArchive {

    private static final String MAIN = OneModule.NAME + "/offtape.cli.Main";

    /** What begins a line on the code by which lambdas are called, which can be archived. */
    private static final String INVOKER = "lambda-form-invoker ";

    private final Path runtime;
    private final Path work;

    private ClassArchive(Path runtime, Path work) {
        this.runtime = runtime;
        this.work = work;
    }

    /**
     * Adds it to a runtime.
     *
     * @param work a folder for what is needed meanwhile
     */
    static void add(Path runtime, Path work) throws IOException {
        new ClassArchive(runtime, work).add();
    }

    private void add() throws IOException {
        Path programme = work.resolve("programme");
        Path sound = programme.resolve("programme.wav");
        list("prepare", "--short", "--quiet", "--out", programme);
        list(
                "measure",
                sound,
                "--programme",
                programme,
                "--mode",
                "reference-tape",
                "--quiet",
                "--out",
                work.resolve("session"));
        list("speed", sound);
        list("--help");
        Path classes = work.resolve("classes");
        Files.write(classes, classes());
        List<String> words = java();
        words.add("-Xshare:dump");
        words.add("-XX:SharedClassListFile=" + classes);
        words.add("-XX:SharedArchiveFile=" + place());
        words.addAll(List.of("-m", MAIN));
        Command.program(work.resolve("log"), words);
    }

    private List<String> java() {
        String name = Release.isWindows() ? "java.exe" : "java";
        return new ArrayList<>(List.of(runtime.resolve("bin").resolve(name).toString()));
    }

    private Path place() {
        String folder = Release.isWindows() ? "bin/server" : "lib/server";
        return runtime.resolve(folder).resolve("classes.jsa");
    }

    /** Runs a command and writes down the classes that it loads. */
    private void list(Object... command) throws IOException {
        List<String> words = java();
        words.addAll(List.of("-XX:TieredStopAtLevel=1", "-XX:Tier3BackEdgeThreshold=4000"));
        words.add("-XX:DumpLoadedClassList=" + work.resolve("list." + command[0]));
        words.addAll(List.of("-m", MAIN));
        Stream.of(command).map(Object::toString).forEach(words::add);
        Command.program(work.resolve("log"), words);
    }

    /**
     * The classes of all lists. Java 17 breaks down now and then when it archives the classes
     * behind lambdas, so those are left out. Numbers of classes, which Java 25 writes, hold for one
     * list only.
     */
    private TreeSet<String> classes() throws IOException {
        TreeSet<String> classes = new TreeSet<>();
        for (Path file : Folders.files(work)) {
            if (file.getParent().equals(work)
                    && file.getFileName().toString().startsWith("list.")) {
                Files.readAllLines(file).stream()
                        .filter(l -> !l.matches("(@(?!" + INVOKER + ")|#).*"))
                        .filter(l -> !l.contains(" source: "))
                        .map(l -> l.startsWith("@") ? l : l.replaceFirst(" .*", ""))
                        .forEach(classes::add);
            }
        }
        return classes;
    }
}
