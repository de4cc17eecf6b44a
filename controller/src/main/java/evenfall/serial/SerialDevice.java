package evenfall.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import evenfall.rig.Rig;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A device opened by jSerialComm, read half-blocking.
 *
 * <p>Its listeners spin at full speed once a device is unplugged, its streams cannot tell silence from unplugging, and a port
 * object goes on pointing at the device that its link pointed at first. Hence plain reads, and a new object for each attempt.
 */
final class SerialDevice implements Device {
    /** How long a read waits for the first byte; also how long a stop may have to wait. */
    private static final int READ_MS = 100;

    private static final int EACCES = 13;
    private static final int EAGAIN = 11;
    private static final int EBUSY = 16;

    private final SerialPort port;

    private SerialDevice(SerialPort port) {
        this.port = port;
    }

    /** The library's port for a path; {@link SerialPortInvalidPortException} where it knows of none. */
    @FunctionalInterface
    interface Ports {
        SerialPort at(String path);
    }

    static Device open(Rig.Port wanted) throws RefusedException {
        return open(wanted, SerialPort::getCommPort);
    }

    /** @param ports where the library's port comes from */
    static Device open(Rig.Port wanted, Ports ports) throws RefusedException {
        String path = wanted.device();
        if (!Files.exists(Path.of(path))) {
            throw new RefusedException("there is no " + path);
        }
        SerialPort port;
        try {
            port = ports.at(path);
        } catch (SerialPortInvalidPortException e) {
            throw new RefusedException(path + " is not a serial port");
        }
        port.setComPortParameters(wanted.baud(), 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MS, 0);
        if (!port.openPort()) {
            throw new RefusedException(refusal(path, port.getLastErrorCode()));
        }
        return new SerialDevice(port);
    }

    private static String refusal(String path, int errno) {
        return switch (errno) {
            case EACCES -> path + " may not be opened by this user";
            case EAGAIN, EBUSY -> path + " is in use by another program";
            default -> path + " cannot be opened (system error " + errno + ")";
        };
    }

    @Override
    public int read(byte[] buffer) {
        int count = port.readBytes(buffer, buffer.length);
        return count < 0 ? GONE : count;
    }

    @Override
    public void close() {
        port.closePort();
    }
}
