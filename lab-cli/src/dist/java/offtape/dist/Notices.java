package offtape.dist;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;

/**
 * What the licences of the libraries ask for: their texts and notices, as their jars hold them, or
 * as they lie here where a jar holds none. A library without either fails the build.
 */
final class Notices {

    private static final String TEXTS = "META-INF/[^/]*(LICEN[CS]E|NOTICE|AL2\\.0)[^/]*";
    private static final String OWN = "(reference-data|lab-[a-z]+)-.*";

    private Notices() {}

    /** Writes the texts and their list. */
    static void write(Path image, List<Path> jars, Path module) throws IOException {
        List<String> rows =
                Files.readAllLines(module.resolve("src/main/resources/offtape/cli/licences.csv"));
        Path kept = module.resolve("src/dist/licences");
        StringBuilder list =
                new StringBuilder(
                        Files.readString(module.resolve("src/dist/text/THIRD-PARTY.txt")));
        list.append('\n');
        for (Path jar : jars) {
            String file = jar.getFileName().toString();
            if (file.matches(OWN)) {
                continue;
            }
            String library = file.replaceFirst("-\\d.*", "");
            Path folder = image.resolve("licences").resolve(library);
            int texts = fromJar(jar, folder) + fromHere(kept, library, folder);
            if (texts == 0) {
                throw new IllegalStateException("there is no text of the licence of " + library);
            }
            list.append(file.replace(".jar", "")).append(": ").append(licence(rows, library));
            list.append(", licences/").append(library).append("/\n");
        }
        list.append("Java ").append(java(image)).append(": runtime/legal/\n");
        Files.writeString(image.resolve("THIRD-PARTY.txt"), list);
    }

    private static int fromJar(Path jar, Path folder) throws IOException {
        int texts = 0;
        try (JarFile file = new JarFile(jar.toFile())) {
            for (JarEntry entry : file.stream().toList()) {
                if (entry.getName().matches(TEXTS)) {
                    Files.createDirectories(folder);
                    try (InputStream in = file.getInputStream(entry)) {
                        Files.copy(in, folder.resolve(entry.getName().replace("META-INF/", "")));
                    }
                    texts++;
                }
            }
        }
        return texts;
    }

    /** Texts kept here lie under the name of the library, or are those of several. */
    private static int fromHere(Path kept, String library, Path folder) throws IOException {
        List<Path> texts = new ArrayList<>();
        for (Path file : Folders.files(kept)) {
            String name = Folders.name(kept, file);
            String of = name.substring(0, name.indexOf('/'));
            if (List.of(of.split("\\+")).contains(library)) {
                texts.add(file);
            }
        }
        for (Path text : texts) {
            Files.createDirectories(folder);
            Files.copy(text, folder.resolve(text.getFileName()));
        }
        return texts.size();
    }

    private static String licence(List<String> rows, String library) {
        return rows.stream()
                .map(r -> r.split(","))
                .filter(r -> r[0].equals(library) && r[2].equals("shipped"))
                .map(r -> r[1])
                .findFirst()
                .orElseThrow(
                        () -> new IllegalStateException(library + " is not listed as shipped"));
    }

    private static String java(Path image) throws IOException {
        Properties release = new Properties();
        try (InputStream in = Files.newInputStream(image.resolve("runtime/release"))) {
            release.load(in);
        }
        String version = System.getProperty("java.runtime.version");
        return version
                + " by "
                + System.getProperty("java.vendor")
                + ", GPL-2.0 with Classpath"
                + " Exception, modules "
                + release.getProperty("MODULES").replace("\"", "");
    }
}
