package offtape.dist;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Makes a folder that holds all that Offtape needs, and the same packed. What runs lies in one
 * module inside the runtime, so that the folder can be moved: an archive of classes belongs to the
 * place of jars, but not to the place of a runtime.
 */
public final class MakeImage {

    private MakeImage() {}

    /**
     * Makes the image.
     *
     * @param args the jar of the commands, the folder of its libraries, the folder of this module,
     *     the folder of the whole project, where to make the image, the version, the day of the
     *     software with its time
     */
    public static void main(String[] args) throws IOException {
        Path jar = Path.of(args[0]);
        Path libraries = Path.of(args[1]);
        Path module = Path.of(args[2]);
        Path project = Path.of(args[3]);
        Path target = Path.of(args[4]);
        Release release = new Release(args[5], args[6]);

        Folders.remove(target);
        Path image = Files.createDirectories(target.resolve(release.imageName()));
        List<Path> jars = Jars.of(jar, libraries);
        Path work = Files.createDirectories(target.resolve("work"));
        Path merged = OneModule.of(jars, work.resolve("module"), release.version());
        Path runtime = image.resolve("runtime");
        Runtime.link(merged, runtime, JavaOptions.read(module.resolve("src/main/launch")));
        ClassArchive.add(runtime, work);
        Surroundings.write(image, module.resolve("src/dist"), project, release);
        Notices.write(image, jars, module);
        Folders.remove(work);
        Tarball.of(image, target.resolve(release.imageName() + ".tar.gz"), release.time());
    }
}
