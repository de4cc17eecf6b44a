package evenfall.config;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;

/** What is wrong with a file that a person named, in words. */
public final class FileCheck {
    private FileCheck() {}

    /**
     * @param name the file's name as the person gave it
     * @param allowed what would be right
     * @throws ConfigException when there is no such file, or it is none that can be read
     */
    public static void isReadable(Path file, String name, String allowed) throws ConfigException {
        if (name.isBlank()) {
            throw new ConfigException("FILE", 0, null, "an empty name cannot be used", allowed);
        }
        if (Files.isDirectory(file)) {
            throw new ConfigException(name, 0, null, "is a folder", allowed);
        }
        if (!Files.exists(file)) {
            throw new ConfigException(name, 0, null, "there is no such file", allowed);
        }
        if (!Files.isRegularFile(file)) {
            throw new ConfigException(name, 0, null, "is a device or a pipe", allowed);
        }
        if (!Files.isReadable(file)) {
            throw new ConfigException(name, 0, null, "may not be read by this user", allowed);
        }
    }

    /**
     * To be asked before long work whose result goes there.
     *
     * @param option that names the file
     * @throws ConfigException when the file cannot be written: its folder is missing or closed to this user, or it is a folder
     */
    public static void isWritable(Path file, String option) throws ConfigException {
        Path folder = file.toAbsolutePath().getParent();
        String allowed = "a file in a folder that exists and may be written to";
        String wrong = null;
        if (Files.isDirectory(file)) {
            wrong = "is a folder";
        } else if (folder == null || !Files.isDirectory(folder)) {
            wrong = "cannot be written: there is no folder " + folder;
        } else if (Files.exists(file) ? !Files.isWritable(file) : !Files.isWritable(folder)) {
            wrong = "cannot be written: this user may not";
        }
        if (wrong != null) {
            throw ConfigException.ofOption(option, file + " " + wrong, allowed);
        }
    }

    /** Why a file could not be read or written: for some causes Java's own message is nothing but the file's name. */
    public static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such file or folder";
        }
        if (e instanceof AccessDeniedException) {
            return "this user may not";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "there is a file of that name";
        }
        if (e instanceof NotDirectoryException) {
            return "a part of the path is no folder";
        }
        if (e instanceof FileSystemException file && file.getReason() != null) {
            return file.getReason();
        }
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }
}
