package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class ConsoleTest {
    private final ByteArrayOutputStream printed = new ByteArrayOutputStream();

    @Test
    void linesComeOutInOrderAndAllOfThemBeforeItCloses() throws Exception {
        Console console = new Console(new PrintStream(printed, false, StandardCharsets.UTF_8));
        console.start();
        console.line("one");
        console.line("two");
        console.close(Duration.ofSeconds(5));
        assertThat(printed.toString(StandardCharsets.UTF_8).lines()).containsExactly("one", "two");
    }

    @Test
    void aTerminalThatIsHeldUpHoldsUpNobodyAndWhatWasNotShownIsCounted() throws Exception {
        CountDownLatch released = new CountDownLatch(1);
        OutputStream heldUp = new OutputStream() {
            @Override
            public void write(int b) {
                try {
                    released.await();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
                printed.write(b);
            }
        };
        Console console = new Console(new PrintStream(heldUp, true, StandardCharsets.UTF_8));
        console.start();
        for (int i = 0; i < 1000; i++) {
            console.line("line " + i);
        }
        console.close(Duration.ofMillis(1));
        released.countDown();
        console.close(Duration.ofSeconds(5));
        assertThat(printed.toString(StandardCharsets.UTF_8))
                .startsWith("line 0\n")
                .contains("lines not shown: the console was too slow)");
    }
}
