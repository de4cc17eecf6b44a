package evenfall.sim.feed;

import com.sun.jna.LastErrorException;
import com.sun.jna.Memory;
import com.sun.jna.Native;
import com.sun.jna.NativeLong;
import evenfall.sim.world.Emission;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.ReentrantReadWriteLock;

/**
 * A serial port that exists only in the kernel: a pseudo-terminal. The controller opens its path as it would any port's.
 *
 * <p>The far end is also held open here, so that it stays in raw mode while nobody else has it. Every call waits by
 * {@code poll} with a limit and none sits in {@code read} or {@code write}: a close during such a call would not hang up the far
 * end.
 */
public final class VirtualPort implements Feed {
    /** How long a sentence may wait for room, ms; then it is dropped, and so is all that follows until there is room again. */
    private static final int PATIENCE_MS = 50;

    private static final int LONGEST_READ_WAIT_MS = 100;

    private final int master;
    private final int slave;
    private final Path path;
    private final Optional<Path> link;
    private final ReentrantReadWriteLock use = new ReentrantReadWriteLock();
    private boolean closed;
    private final AtomicLong droppedBytes = new AtomicLong();
    private volatile boolean stalled;

    private VirtualPort(int master, int slave, Path path, Optional<Path> link) {
        this.master = master;
        this.slave = slave;
        this.path = path;
        this.link = link;
    }

    /** A new port under the name that the kernel gives it. */
    public static VirtualPort open() throws IOException {
        return open(Optional.empty());
    }

    /**
     * A new port with a symbolic link to it, so that it keeps its name when it is made again.
     *
     * @param link where the link shall be; an old link there is replaced, anything else is an error
     */
    public static VirtualPort open(Path link) throws IOException {
        return open(Optional.of(link));
    }

    private static VirtualPort open(Optional<Path> link) throws IOException {
        LibC c = LibC.Holder.C;
        int master;
        try {
            master = c.posix_openpt(LibC.O_RDWR | LibC.O_NOCTTY | LibC.O_NONBLOCK);
        } catch (LastErrorException e) {
            throw new IOException("the system gives no pseudo-terminal: " + e.getMessage(), e);
        }
        int slave = -1;
        try {
            c.grantpt(master);
            c.unlockpt(master);
            byte[] name = new byte[128];
            int error = c.ptsname_r(master, name, new NativeLong(name.length));
            if (error != 0) {
                throw new IOException("the pseudo-terminal has no name (error " + error + ")");
            }
            Path path = Path.of(Native.toString(name, StandardCharsets.UTF_8));
            slave = c.open(path.toString(), LibC.O_RDWR | LibC.O_NOCTTY);
            makeRaw(c, slave);
            if (link.isPresent()) {
                if (Files.isSymbolicLink(link.get())) {
                    Files.delete(link.get());
                }
                Files.createSymbolicLink(link.get(), path);
            }
            return new VirtualPort(master, slave, path, link);
        } catch (LastErrorException e) {
            hangUp(c, master, slave);
            throw new IOException("the pseudo-terminal cannot be set up: " + e.getMessage(), e);
        } catch (IOException e) {
            hangUp(c, master, slave);
            throw e;
        }
    }

    private static void makeRaw(LibC c, int fd) {
        try (Memory termios = new Memory(LibC.TERMIOS_BYTES)) {
            c.tcgetattr(fd, termios);
            c.cfmakeraw(termios);
            c.tcsetattr(fd, LibC.TCSANOW, termios);
        }
    }

    private static void hangUp(LibC c, int master, int slave) {
        try {
            if (slave >= 0) {
                c.close(slave);
            }
        } finally {
            c.close(master);
        }
    }

    /** The path that the other side opens: the link where there is one. */
    public Path path() {
        return link.orElse(path);
    }

    @Override
    public void accept(Emission emission) {
        write(emission.bytes());
    }

    /**
     * Writes bytes, waiting a little for room; a port that has had none drops at once until it has some again. After {@link #close}
     * all is dropped.
     *
     * @return how many went out
     */
    public int write(byte[] bytes) {
        use.readLock().lock();
        try (Memory memory = new Memory(Math.max(1, bytes.length))) {
            memory.write(0, bytes, 0, bytes.length);
            int done = 0;
            while (done < bytes.length && !closed) {
                int went = writeSome(memory, done, bytes.length - done);
                if (went > 0) {
                    done += went;
                    stalled = false;
                } else if (stalled || !ready(LibC.POLLOUT, PATIENCE_MS)) {
                    stalled = true;
                    break;
                }
            }
            droppedBytes.addAndGet(bytes.length - done);
            return done;
        } finally {
            use.readLock().unlock();
        }
    }

    private int writeSome(Memory memory, int from, int count) {
        try {
            return LibC.Holder.C
                    .write(master, memory.share(from), new NativeLong(count))
                    .intValue();
        } catch (LastErrorException e) {
            if (e.getErrorCode() == LibC.EAGAIN || e.getErrorCode() == LibC.EINTR) {
                return 0;
            }
            throw e;
        }
    }

    /**
     * Reads what the other side has written.
     *
     * @param into where to
     * @param timeoutMs how long to wait when there is nothing, at most 100 ms
     * @return how many bytes came; 0 when none did in that time
     */
    public int read(byte[] into, int timeoutMs) {
        use.readLock().lock();
        try {
            if (closed || !ready(LibC.POLLIN, Math.min(timeoutMs, LONGEST_READ_WAIT_MS))) {
                return 0;
            }
            return Math.max(
                    0,
                    LibC.Holder.C
                            .read(master, into, new NativeLong(into.length))
                            .intValue());
        } catch (LastErrorException e) {
            if (e.getErrorCode() == LibC.EAGAIN || e.getErrorCode() == LibC.EINTR) {
                return 0;
            }
            throw e;
        } finally {
            use.readLock().unlock();
        }
    }

    private boolean ready(short event, int timeoutMs) {
        try (Memory pollfd = new Memory(LibC.POLLFD_BYTES)) {
            pollfd.setInt(0, master);
            pollfd.setShort(4, event);
            pollfd.setShort(6, (short) 0);
            return LibC.Holder.C.poll(pollfd, new NativeLong(1), timeoutMs) > 0 && (pollfd.getShort(6) & event) != 0;
        } catch (LastErrorException e) {
            if (e.getErrorCode() == LibC.EINTR) {
                return false;
            }
            throw e;
        }
    }

    /** Throws away what the other side has not read yet, as a port does that nobody had open. */
    public void discardUnread() {
        use.readLock().lock();
        try {
            if (!closed) {
                LibC.Holder.C.tcflush(slave, LibC.TCIFLUSH);
                stalled = false;
            }
        } finally {
            use.readLock().unlock();
        }
    }

    @Override
    public long droppedBytes() {
        return droppedBytes.get();
    }

    /** Hangs up: the other side's next read says that the port is gone. */
    @Override
    public void close() throws IOException {
        use.writeLock().lock();
        try {
            if (closed) {
                return;
            }
            closed = true;
            hangUp(LibC.Holder.C, master, slave);
            if (link.isPresent() && Files.isSymbolicLink(link.get())) {
                Files.delete(link.get());
            }
        } finally {
            use.writeLock().unlock();
        }
    }
}
