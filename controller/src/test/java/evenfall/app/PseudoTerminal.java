package evenfall.app;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import java.nio.charset.StandardCharsets;

/** A pseudo-terminal whose slave looks like a serial device to the program under test; the test holds the master. */
final class PseudoTerminal implements AutoCloseable {
    private static final LibC C = Native.load("c", LibC.class);
    private static final int O_RDWR = 2;
    private static final int O_NOCTTY = 0x100;
    /** Larger than any termios structure. */
    private static final int TERMIOS_BYTES = 256;

    private final int master;
    private final String slave;

    private interface LibC extends Library {
        int posix_openpt(int flags) throws LastErrorException;

        int grantpt(int fd) throws LastErrorException;

        int unlockpt(int fd) throws LastErrorException;

        int ptsname_r(int fd, byte[] buffer, long length) throws LastErrorException;

        int tcgetattr(int fd, Memory termios) throws LastErrorException;

        void cfmakeraw(Memory termios);

        int tcsetattr(int fd, int when, Memory termios) throws LastErrorException;

        long write(int fd, byte[] bytes, long length) throws LastErrorException;

        int close(int fd) throws LastErrorException;
    }

    PseudoTerminal() {
        master = C.posix_openpt(O_RDWR | O_NOCTTY);
        C.grantpt(master);
        C.unlockpt(master);
        byte[] name = new byte[64];
        C.ptsname_r(master, name, name.length);
        slave = Native.toString(name, StandardCharsets.US_ASCII.name());
        try (Memory termios = new Memory(TERMIOS_BYTES)) {
            C.tcgetattr(master, termios);
            C.cfmakeraw(termios);
            C.tcsetattr(master, 0, termios);
        }
    }

    /** Path of the slave. */
    String device() {
        return slave;
    }

    void say(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        long written = C.write(master, bytes, bytes.length);
        if (written != bytes.length) {
            throw new AssertionError("the pseudo-terminal took " + written + " of " + bytes.length + " bytes");
        }
    }

    /** Hangs up, as unplugging does. */
    @Override
    public void close() {
        C.close(master);
    }
}
