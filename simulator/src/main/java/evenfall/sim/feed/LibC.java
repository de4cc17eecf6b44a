package evenfall.sim.feed;

import com.sun.jna.LastErrorException;
import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import com.sun.jna.Pointer;

/** The C library's calls for pseudo-terminals, with Linux's constants. Names and signatures are those of its manual pages. */
interface LibC extends Library {
    int O_RDWR = 2;
    int O_NOCTTY = 0x100;
    int O_NONBLOCK = 0x800;
    int TCSANOW = 0;
    int TCIFLUSH = 0;
    short POLLIN = 1;
    short POLLOUT = 4;
    int EINTR = 4;
    int EAGAIN = 11;

    /** Size of a {@code struct pollfd}. */
    int POLLFD_BYTES = 8;

    /** More than any {@code struct termios} takes (60 bytes on Linux). */
    int TERMIOS_BYTES = 256;

    /** Loaded at first use, not before. */
    final class Holder {
        static final LibC C = Native.load("c", LibC.class);

        private Holder() {}
    }

    int posix_openpt(int flags) throws LastErrorException;

    int grantpt(int fd) throws LastErrorException;

    int unlockpt(int fd) throws LastErrorException;

    /** Returns the error number itself; 0 is well. */
    int ptsname_r(int fd, byte[] name, NativeLong size);

    int open(String path, int flags) throws LastErrorException;

    int close(int fd) throws LastErrorException;

    NativeLong read(int fd, byte[] into, NativeLong size) throws LastErrorException;

    NativeLong write(int fd, Pointer from, NativeLong size) throws LastErrorException;

    int poll(Pointer pollfd, NativeLong count, int timeoutMs) throws LastErrorException;

    int tcgetattr(int fd, Pointer termios) throws LastErrorException;

    int tcsetattr(int fd, int when, Pointer termios) throws LastErrorException;

    void cfmakeraw(Pointer termios);

    int tcflush(int fd, int queue) throws LastErrorException;
}
