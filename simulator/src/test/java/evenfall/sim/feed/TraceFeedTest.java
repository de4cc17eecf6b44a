package evenfall.sim.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenfall.sim.world.Emission;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TraceFeedTest {
    private static Emission emission(long timeUs, String port, String text) {
        return new Emission(timeUs, port, text.getBytes(StandardCharsets.US_ASCII));
    }

    @Test
    void writesOneEventALine() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (TraceFeed trace = new TraceFeed(out)) {
            trace.remark("invented,\nfor a test");
            trace.accept(emission(4514, "hub", "$PEVFQ,0,0,*78\r\n"));
            trace.accept(emission(4514, "gnss", "$GPRMC,,V,,,,,,,,,,N*53\r\n"));
            trace.end(5000);
        }
        assertThat(out.toString(StandardCharsets.UTF_8))
                .isEqualTo("# invented, for a test\n4514 hub $PEVFQ,0,0,*78\n4514 gnss $GPRMC,,V,,,,,,,,,,N*53\n"
                        + "5000 - end\n");
    }

    @Test
    void bytesThatAreNoWholeSentenceAreEscaped() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (TraceFeed trace = new TraceFeed(out)) {
            trace.accept(emission(1, "hub", "$PEVFQ,0"));
            trace.accept(emission(2, "hub", ",0,*78\r\n"));
            trace.accept(new Emission(3, "hub", new byte[] {(byte) 0xff, ' ', '%', 'a'}));
        }
        assertThat(out.toString(StandardCharsets.UTF_8))
                .isEqualTo("1 hub bytes:$PEVFQ,0\n2 hub bytes:,0,*78%0D%0A\n3 hub bytes:%FF%20%25a\n");
    }

    @Test
    void refusesToGoBackInTime() {
        TraceFeed trace = new TraceFeed(new ByteArrayOutputStream());
        trace.accept(emission(10, "hub", "$X*58\r\n"));
        assertThatThrownBy(() -> trace.accept(emission(9, "hub", "$X*58\r\n"))).hasMessageContaining("after one at 10");
    }

    @Test
    void packsAFileThatEndsInGz(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("run.trace.gz");
        try (TraceFeed trace = TraceFeed.to(file)) {
            trace.accept(emission(1, "hub", "$X*58\r\n"));
            trace.end(2);
        }
        try (GZIPInputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8)).isEqualTo("1 hub $X*58\n2 - end\n");
        }
    }

    @Test
    void bytesForAPortWithoutAFeedAreCountedAsDropped() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (FeedByPort feeds = new FeedByPort(Map.of("hub", new TraceFeed(out)))) {
            feeds.accept(emission(1, "hub", "$X*58\r\n"));
            feeds.accept(emission(1, "gnss", "$X*58\r\n"));
            assertThat(feeds.droppedBytes()).isEqualTo(7);
        }
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("1 hub $X*58\n");
    }

    @Test
    void aFastPaceIsHeldAndAnInterruptEndsIt() {
        RealTimePace pace = new RealTimePace(1000);
        long beforeNs = System.nanoTime();
        assertThat(pace.await(0)).isTrue();
        assertThat(pace.await(20_000_000)).isTrue();
        assertThat(System.nanoTime() - beforeNs).isGreaterThanOrEqualTo(20_000_000L);
        Thread.currentThread().interrupt();
        assertThat(pace.await(2_000_000_000)).isFalse();
        assertThat(Thread.interrupted()).isTrue();
    }
}
