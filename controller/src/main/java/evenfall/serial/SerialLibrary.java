package evenfall.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The native part of the serial library, which has to be unpacked and loaded before the first port opens. */
public final class SerialLibrary {
    private SerialLibrary() {}

    /**
     * Loads it; to be called once, at the start, so that a read-only file system is a clear message and not a fault of some
     * thread later.
     *
     * @return null when it is loaded, else one line that says what is wrong and what to do
     */
    public static @Nullable String load() {
        try {
            SerialPort.getCommPorts();
            return null;
        } catch (LinkageError e) {
            return "the native library for serial ports cannot be loaded (" + e.getMessage()
                    + "); allowed: a temporary folder or home that can be written to, or"
                    + " -DjSerialComm.library.path=FOLDER with the library in it";
        }
    }

    /**
     * The serial ports that the system knows of, by path. Pseudo-terminals are not among them; they open by their path all the same.
     *
     * @return path and what the system calls it, sorted by path
     */
    public static SortedMap<String, String> ports() {
        SortedMap<String, String> found = new TreeMap<>();
        for (SerialPort port : SerialPort.getCommPorts()) {
            // The library lists any path that was once opened.
            if (!port.getSystemPortPath().startsWith("/dev/pts/")) {
                found.put(port.getSystemPortPath(), port.getDescriptivePortName());
            }
        }
        return found;
    }

    /**
     * Has a thread run when the process is asked to stop, before the library closes all ports by a hook of its own: a closing that
     * must not look as if everything had been unplugged at once.
     */
    public static void whenStopping(Thread hook) {
        SerialPort.addShutdownHook(hook);
    }
}
