package evenfall.sim.feed;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import evenfall.sim.world.Emission;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class VirtualPortIT {
    private static SerialPort opened(Path path) {
        SerialPort port = SerialPort.getCommPort(path.toString());
        port.setComPortParameters(115_200, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
        port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, 200, 0);
        assertThat(port.openPort()).isTrue();
        return port;
    }

    private static String read(SerialPort port, int length) {
        StringBuilder text = new StringBuilder();
        byte[] buffer = new byte[4096];
        for (int tries = 0; tries < 50 && text.length() < length; tries++) {
            int count = port.readBytes(buffer, buffer.length);
            if (count > 0) {
                text.append(new String(buffer, 0, count, StandardCharsets.ISO_8859_1));
            }
        }
        return text.toString();
    }

    @Test
    void everyByteComesBackAsItWasWritten(@TempDir Path folder) throws IOException {
        Path link = folder.resolve("hub");
        try (VirtualPort port = VirtualPort.open(link)) {
            assertThat(Files.isSymbolicLink(link)).isTrue();
            byte[] all = new byte[256];
            for (int i = 0; i < 256; i++) {
                all[i] = (byte) i;
            }
            SerialPort other = opened(port.path());
            try {
                port.accept(new Emission(0, "hub", all));
                assertThat(read(other, 256)).isEqualTo(new String(all, StandardCharsets.ISO_8859_1));

                StringBuilder expected = new StringBuilder();
                StringBuilder got = new StringBuilder();
                for (int i = 0; i < 2000; i++) {
                    String line = "$PEVFQ," + i + ",0,*00\r\n";
                    expected.append(line);
                    port.write(line.getBytes(StandardCharsets.US_ASCII));
                    if (i % 50 == 49) {
                        got.append(read(other, expected.length() - got.length()));
                    }
                }
                assertThat(got.toString()).isEqualTo(expected.toString());
                assertThat(port.droppedBytes()).isZero();

                byte[] command = "$PEVFX\r\n".getBytes(StandardCharsets.US_ASCII);
                other.writeBytes(command, command.length);
                byte[] heard = new byte[64];
                int count = 0;
                for (int tries = 0; tries < 20 && count == 0; tries++) {
                    count = port.read(heard, 100);
                }
                assertThat(new String(heard, 0, count, StandardCharsets.US_ASCII))
                        .isEqualTo("$PEVFX\r\n");
            } finally {
                other.closePort();
            }
        }
        assertThat(Files.exists(link, java.nio.file.LinkOption.NOFOLLOW_LINKS)).isFalse();
    }

    @Test
    void closingHangsUpTheOtherSide() throws IOException {
        VirtualPort port = VirtualPort.open();
        SerialPort other = opened(port.path());
        try {
            port.write("x".getBytes(StandardCharsets.US_ASCII));
            assertThat(read(other, 1)).isEqualTo("x");
            port.close();
            assertThat(other.readBytes(new byte[8], 8)).isEqualTo(-1);
            assertThat(port.write(new byte[5])).isZero();
            assertThat(port.droppedBytes()).isEqualTo(5);
        } finally {
            other.closePort();
            port.close();
        }
    }

    @Test
    void aPortThatNobodyReadsDropsAndCountsAndNeverHoldsTheRunUp() throws IOException {
        try (VirtualPort port = VirtualPort.open()) {
            byte[] sentence = "$PEVFH,100000,2912,3022,2874,2990,3105*4B\r\n".getBytes(StandardCharsets.US_ASCII);
            long startNs = System.nanoTime();
            long written = 0;
            int sentences = 20_000;
            for (int i = 0; i < sentences; i++) {
                written += port.write(sentence);
            }
            assertThat(Duration.ofNanos(System.nanoTime() - startNs)).isLessThan(Duration.ofSeconds(5));
            assertThat(port.droppedBytes()).isPositive();
            assertThat(written + port.droppedBytes()).isEqualTo((long) sentences * sentence.length);

            port.discardUnread();
            SerialPort other = opened(port.path());
            try {
                assertThat(port.write(sentence)).isEqualTo(sentence.length);
                assertThat(read(other, sentence.length)).isEqualTo(new String(sentence, StandardCharsets.US_ASCII));
            } finally {
                other.closePort();
            }
        }
    }

    @Test
    void theRealPortsFeedWritesToo() throws IOException {
        try (VirtualPort port = VirtualPort.open();
                SerialFeed feed = SerialFeed.open(port.path().toString(), 115_200)) {
            feed.accept(new Emission(0, "hub", "$PEVFS,0,3F*00\r\n".getBytes(StandardCharsets.US_ASCII)));
            byte[] heard = new byte[64];
            int count = 0;
            for (int tries = 0; tries < 20 && count == 0; tries++) {
                count = port.read(heard, 100);
            }
            assertThat(new String(heard, 0, count, StandardCharsets.US_ASCII)).isEqualTo("$PEVFS,0,3F*00\r\n");
            assertThat(feed.droppedBytes()).isZero();
        }
    }
}
