package offtape.dist;

import java.io.IOException;
import java.io.InputStream;
import java.lang.module.ModuleDescriptor;
import java.lang.module.ModuleFinder;
import java.lang.module.ModuleReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Collectors;

/**
 * The contents of many jars as one module, since most of them are none themselves and a runtime is
 * linked of modules alone.
 */
final class OneModule {

    static final String NAME = "offtape";

    private OneModule() {}

    /** Writes the module; returns its folder. */
    static Path of(List<Path> jars, Path folder, String version) throws IOException {
        for (Path jar : jars) {
            unpack(jar, folder);
        }
        Path source = folder.resolveSibling("module-info.java");
        Files.writeString(source, source(jars, needed(folder)));
        Command.tool(
                "javac",
                List.of(
                        "-d",
                        folder.toString(),
                        "--release",
                        "17",
                        "--patch-module",
                        NAME + "=" + folder,
                        "--module-version",
                        version,
                        source.toString()));
        return folder;
    }

    private static void unpack(Path jar, Path folder) throws IOException {
        Natives natives = Natives.ofThisSystem();
        try (JarFile file =
                new JarFile(jar.toFile(), true, JarFile.OPEN_READ, java.lang.Runtime.version())) {
            // of what a jar has for several versions of Java, what the running one would take
            List<JarEntry> entries = file.versionedStream().toList();
            for (JarEntry entry : entries) {
                if (!entry.isDirectory()
                        && isNeeded(entry.getName())
                        && natives.isNeeded(entry.getName())) {
                    Path to = folder.resolve(entry.getName());
                    Files.createDirectories(to.getParent());
                    try (InputStream in = file.getInputStream(entry)) {
                        Files.copy(in, to, StandardCopyOption.REPLACE_EXISTING);
                    }
                }
            }
        }
    }

    /** Licences lie beside the runtime; manifests, signatures and services say nothing in it. */
    private static boolean isNeeded(String name) {
        return !name.endsWith("module-info.class")
                && (!name.startsWith("META-INF/") || name.startsWith("META-INF/jline/"));
    }

    /** The modules of Java that the classes use. */
    private static List<String> needed(Path folder) {
        String modules =
                Command.tool(
                        "jdeps",
                        List.of("--print-module-deps", "--ignore-missing-deps", folder.toString()));
        return List.of(modules.strip().split(","));
    }

    private static String source(List<Path> jars, Collection<String> needed) {
        List<ModuleDescriptor> modules =
                ModuleFinder.of(jars.toArray(Path[]::new)).findAll().stream()
                        .map(ModuleReference::descriptor)
                        .sorted(Comparator.comparing(ModuleDescriptor::name))
                        .toList();
        TreeSet<String> uses = new TreeSet<>();
        Map<String, TreeSet<String>> provides = new TreeMap<>();
        for (ModuleDescriptor module : modules) {
            uses.addAll(module.uses());
            for (ModuleDescriptor.Provides p : module.provides()) {
                provides.computeIfAbsent(p.service(), s -> new TreeSet<>()).addAll(p.providers());
            }
        }
        StringBuilder text = new StringBuilder("module " + NAME + " {\n");
        needed.forEach(m -> text.append("  requires ").append(m).append(";\n"));
        uses.forEach(s -> text.append("  uses ").append(s).append(";\n"));
        provides.forEach(
                (service, by) ->
                        text.append("  provides ")
                                .append(service)
                                .append(
                                        by.stream()
                                                .collect(
                                                        Collectors.joining(
                                                                ",\n    ", "\n    with ", ";\n"))));
        return text.append("}\n").toString();
    }
}
