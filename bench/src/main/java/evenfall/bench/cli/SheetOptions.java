package evenfall.bench.cli;

import evenfall.bench.page.Picture;
import evenfall.bench.page.PngFile;
import evenfall.bench.sheet.Sheet;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where a page and its pictures go. */
final class SheetOptions {
    @Option(names = "--html", paramLabel = "FILE", description = "Write a page for reading and printing.")
    @Nullable
    Path html;

    @Option(names = "--svg", paramLabel = "DIR", description = "Also write each picture into this folder, as SVG.")
    @Nullable
    Path svg;

    @Option(names = "--png", paramLabel = "DIR", description = "Also write each picture into this folder, as PNG.")
    @Nullable
    Path png;

    boolean any() {
        return html != null || svg != null || png != null;
    }

    /** To be asked before long work. */
    void check() throws ConfigException {
        if (html != null) {
            FileCheck.isWritable(html, "--html");
        }
        folder(svg, "--svg");
        folder(png, "--png");
    }

    private static void folder(@Nullable Path folder, String option) throws ConfigException {
        if (folder == null) {
            return;
        }
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw ConfigException.ofOption(
                    option,
                    "the folder " + folder + " cannot be made (" + FileCheck.reason(e) + ")",
                    "a folder, or the path of one that can be made");
        }
    }

    /**
     * @return the files that were written
     */
    List<Path> write(Sheet sheet) throws IOException {
        List<Path> written = new ArrayList<>();
        if (html != null) {
            written.add(Files.writeString(html, sheet.html()));
        }
        if (svg == null && png == null) {
            return written;
        }
        for (Picture picture : sheet.pictures()) {
            if (svg != null) {
                written.add(Files.writeString(svg.resolve(picture.name() + ".svg"), picture.svg()));
            }
            if (png != null) {
                written.add(Files.write(png.resolve(picture.name() + ".png"), PngFile.of(picture)));
            }
        }
        return written;
    }
}
