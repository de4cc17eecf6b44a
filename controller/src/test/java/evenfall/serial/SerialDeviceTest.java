package evenfall.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyInt;
import static org.mockito.ArgumentMatchers.eq;
import static org.mockito.ArgumentMatchers.intThat;
import static org.mockito.Mockito.inOrder;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.verifyNoInteractions;
import static org.mockito.Mockito.when;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import evenfall.rig.Rig;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.mockito.InOrder;

/**
 * What we ask of the serial library and make of its answers, with a double in its place: a port that another program holds or that this
 * user may not open cannot be had as root on a build machine. {@code SerialPortIT} reads real pseudo-terminals.
 */
class SerialDeviceTest {
    @TempDir
    private Path folder;

    private final SerialPort library = mock(SerialPort.class);
    private Rig.Port wanted = new Rig.Port("hub", "", 115_200);

    @BeforeEach
    void aFileWhereTheDeviceShouldBe() throws Exception {
        Path device = Files.createFile(folder.resolve("ttyTEST0"));
        wanted = new Rig.Port("hub", device.toString(), 115_200);
    }

    private Device opened() throws Device.RefusedException {
        when(library.openPort()).thenReturn(true);
        return SerialDevice.open(wanted, path -> library);
    }

    /** 115200 8N1 without flow control, as wire.md says; a read ends in a tenth of a second, so that a stop is heard. */
    @Test
    void aPortIsSetUpBeforeItIsOpened() throws Exception {
        opened();

        InOrder order = inOrder(library);
        order.verify(library).setComPortParameters(115_200, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        order.verify(library).setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
        order.verify(library)
                .setComPortTimeouts(
                        eq(SerialPort.TIMEOUT_READ_SEMI_BLOCKING), intThat(ms -> ms > 0 && ms <= 100), eq(0));
        order.verify(library).openPort();
    }

    /** The numbers of Linux's errno.h. */
    @ParameterizedTest
    @CsvSource({
        "13, may not be opened by this user",
        "11, is in use by another program",
        "16, is in use by another program",
        "5, cannot be opened (system error 5)"
    })
    void aPortThatDoesNotOpenSaysWhy(int errno, String why) {
        when(library.openPort()).thenReturn(false);
        when(library.getLastErrorCode()).thenReturn(errno);

        assertThatThrownBy(() -> SerialDevice.open(wanted, path -> library))
                .isInstanceOf(Device.RefusedException.class)
                .hasMessage(wanted.device() + " " + why);
    }

    @Test
    void aFileThatIsNoPortIsSaidToBeNone() {
        assertThatThrownBy(() -> SerialDevice.open(wanted, path -> {
                    throw new SerialPortInvalidPortException("scripted", new IllegalStateException());
                }))
                .isInstanceOf(Device.RefusedException.class)
                .hasMessage(wanted.device() + " is not a serial port");
    }

    @Test
    void theLibraryIsNotAskedForADeviceThatIsNotThere() {
        Rig.Port absent = new Rig.Port("hub", folder.resolve("ttyTEST1").toString(), 115_200);

        assertThatThrownBy(() -> SerialDevice.open(absent, path -> library))
                .isInstanceOf(Device.RefusedException.class)
                .hasMessageStartingWith("there is no ");
        verifyNoInteractions(library);
    }

    /** The library's port stays "open" when its device is pulled out; only the count of a read tells (jSerialComm's issues 416 and 481). */
    @ParameterizedTest
    @CsvSource({"7, 7", "0, 0", "-1, -1", "-2, -1"})
    void aReadTellsSilenceFromUnplugging(int fromLibrary, int toReader) throws Exception {
        when(library.readBytes(any(byte[].class), anyInt())).thenReturn(fromLibrary);

        assertThat(opened().read(new byte[16])).isEqualTo(toReader);
        verify(library).readBytes(any(byte[].class), eq(16));
    }

    @Test
    void closingClosesThePort() throws Exception {
        opened().close();

        verify(library).closePort();
    }
}
