package evenfall.bench.prove.record;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;

/** Writes a file whole or not at all: a temporary one beside it, forced to the disk, put in its place. */
public final class WholeFile {
    private WholeFile() {}

    /** Keeps an existing file's owner's rights; follows a link to the file that it means. */
    public static void write(Path file, String text) throws IOException {
        Path target = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
        Path folder = target.getParent();
        if (folder == null) {
            throw new IOException(file + " names no file");
        }
        Path fresh = Files.createTempFile(folder, "." + target.getFileName() + ".", ".new");
        try {
            try (FileChannel channel = FileChannel.open(fresh, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
            copyRights(target, fresh);
            Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(fresh);
        }
        // The new name is on the disk once the folder is.
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    private static void copyRights(Path from, Path to) throws IOException {
        PosixFileAttributeView fresh = Files.getFileAttributeView(to, PosixFileAttributeView.class);
        if (fresh == null) {
            return;
        }
        if (Files.exists(from)) {
            fresh.setPermissions(Files.getPosixFilePermissions(from));
        } else {
            // A temporary file is its owner's alone; a result may be read by all.
            fresh.setPermissions(java.nio.file.attribute.PosixFilePermissions.fromString("rw-r--r--"));
        }
    }
}
