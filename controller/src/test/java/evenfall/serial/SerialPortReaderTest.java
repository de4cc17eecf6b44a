package evenfall.serial;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.retry.BackOff;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** The reader against devices that do what the script says; when the script is at its end, the reader is stopped. */
class SerialPortReaderTest {
    private final List<String> told = new ArrayList<>();
    private final Queue<Object> script = new ArrayDeque<>();
    private final CountDownLatch scriptDone = new CountDownLatch(1);
    private final CountDownLatch neverClosed = new CountDownLatch(1);
    private boolean closingHangs;

    @Test
    void anAbsentDeviceIsLostOnceAndANewReasonIsSaidOnce() throws Exception {
        script.addAll(List.of("refuse:absent", "refuse:absent", "refuse:taken", "refuse:taken", "open", "read:a"));
        runToTheEnd();
        assertThat(told).containsExactly("lost absent", "refused taken", "found", "bytes a");
    }

    @Test
    void anUnpluggedDeviceIsLostAndComesBackByItself() throws Exception {
        script.addAll(List.of(
                "open", "read:a", "read:", "read:bc", "gone", "refuse:absent", "refuse:absent", "open", "read:d"));
        runToTheEnd();
        assertThat(told)
                .containsExactly(
                        "found", "bytes a", "bytes bc", "lost it was unplugged", "refused absent", "found", "bytes d");
    }

    @Test
    void aLibraryThatThrowsIsALostPortAndIsTriedAgain() throws Exception {
        script.addAll(List.of("open", "throw", "open", "read:a"));
        runToTheEnd();
        assertThat(told)
                .containsExactly(
                        "found",
                        "lost the serial library failed: java.lang.IllegalStateException: scripted",
                        "found",
                        "bytes a");
    }

    @Test
    void aDriverThatHangsWhileClosingDoesNotHangTheStop() throws Exception {
        closingHangs = true;
        script.addAll(List.of("open", "read:a"));
        runToTheEnd();
        assertThat(told).containsExactly("found", "bytes a");
        neverClosed.countDown();
    }

    private void runToTheEnd() throws Exception {
        SerialPortReader reader = new SerialPortReader(
                "hub", this::open, new Recorder(), new BackOff(Duration.ofMillis(1), Duration.ofMillis(2)));
        reader.start();
        assertThat(scriptDone.await(10, TimeUnit.SECONDS)).isTrue();
        reader.stop();
        assertThat(reader.await(Duration.ofSeconds(5))).isTrue();
    }

    private Device open() throws Device.RefusedException {
        String step = String.valueOf(script.poll());
        if (step.startsWith("refuse:")) {
            throw new Device.RefusedException(step.substring(7));
        }
        assertThat(step).isIn("open", "null");
        return new Scripted();
    }

    private final class Scripted implements Device {
        @Override
        public int read(byte[] buffer) {
            Object step = script.poll();
            if (step == null) {
                scriptDone.countDown();
                return 0;
            }
            if (step.equals("throw")) {
                throw new IllegalStateException("scripted");
            }
            if (step.equals("gone")) {
                return Device.GONE;
            }
            byte[] bytes = step.toString().substring(5).getBytes(StandardCharsets.US_ASCII);
            System.arraycopy(bytes, 0, buffer, 0, bytes.length);
            return bytes.length;
        }

        @Override
        public void close() {
            if (closingHangs) {
                try {
                    neverClosed.await();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            }
        }
    }

    private final class Recorder implements PortListener {
        @Override
        public void bytes(String port, byte[] chunk) {
            told.add("bytes " + new String(chunk, StandardCharsets.US_ASCII));
        }

        @Override
        public void found(String port) {
            told.add("found");
        }

        @Override
        public void lost(String port, String why) {
            told.add("lost " + why);
        }

        @Override
        public void refused(String port, String why) {
            told.add("refused " + why);
        }
    }
}
