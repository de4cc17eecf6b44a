package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.message.Status;
import evenfall.rig.Rig;
import evenfall.trace.TraceEvent;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** On a clock that the test sets. */
class InboxTest {
    private long nowUs = 1000;
    private final List<String> news = new ArrayList<>();
    private final Inbox inbox = new Inbox(
            List.of(new Rig.Port("hub", "/dev/a", 115_200), new Rig.Port("gnss", "/dev/b", 115_200)),
            3,
            () -> nowUs,
            (timeUs, port, why) -> news.add(timeUs + " " + port + " " + why));

    @Test
    void eventsKeepTheirOrderAndTheTimeAtWhichTheyCame() throws Exception {
        inbox.found("hub");
        nowUs = 2000;
        inbox.bytes("hub", bytes("a"));
        nowUs = 9000;
        assertThat(take()).isEqualTo(new TraceEvent.PortFound(1000, "hub"));
        assertThat(take()).isEqualTo(new TraceEvent.Bytes(2000, "hub", bytes("a")));
        assertThat(news).containsExactly("1000 hub null");
    }

    @Test
    void noEventIsOlderThanTheTimeThatTheCoreWasTold() throws Exception {
        nowUs = 5000;
        assertThat(inbox.take(0)).isEqualTo(new Inbox.Found(null, 5000));
        nowUs = 4000;
        inbox.bytes("hub", bytes("a"));
        assertThat(take().timeUs()).as("even if the clock had gone back").isEqualTo(5000);
    }

    @Test
    void whatIsDoneOnTheCabViewStandsAmongTheInputsAtItsTime() throws Exception {
        nowUs = 3000;
        assertThat(inbox.command(bytes("$A"))).isTrue();
        assertThat(take()).isEqualTo(new TraceEvent.Bytes(3000, "cab", bytes("$A")));
        for (int i = 0; i < 3; i++) {
            inbox.bytes("hub", bytes("a"));
        }
        assertThat(inbox.command(bytes("$A"))).as("no room").isFalse();
    }

    @Test
    void whatFindsTheInboxFullIsCountedAndItsPlaceIsMarked() throws Exception {
        inbox.bytes("hub", bytes("a"));
        inbox.bytes("hub", bytes("b"));
        inbox.bytes("hub", bytes("c"));
        inbox.bytes("hub", bytes("lost"));
        inbox.bytes("gnss", bytes("too"));
        nowUs = 2000;
        assertThat(text(take())).isEqualTo("1000 hub a");
        inbox.bytes("hub", bytes("gone"));
        assertThat(text(take())).isEqualTo("1000 hub b");
        assertThat(text(take())).isEqualTo("1000 hub c");
        inbox.bytes("hub", bytes("d"));
        assertThat(text(take())).isEqualTo("2000 hub dropped 4");
        assertThat(text(take())).isEqualTo("2000 hub dropped 4");
        assertThat(text(take())).isEqualTo("2000 gnss dropped 3");
        assertThat(text(take())).isEqualTo("2000 hub dropped 1");
        inbox.bytes("hub", bytes("e"));
        assertThat(text(take())).isEqualTo("2000 hub e");
        assertThat(inbox.ports()).extracting(Status.Port::droppedBytes).containsExactly(9L, 3L);
    }

    @Test
    void aPortThatWentWhileTheInboxWasFullIsToldAfterwards() throws Exception {
        inbox.bytes("hub", bytes("a"));
        inbox.bytes("hub", bytes("b"));
        inbox.bytes("hub", bytes("c"));
        inbox.lost("hub", "it was unplugged");
        inbox.found("hub");
        inbox.lost("hub", "it was unplugged");
        assertThat(text(take())).isEqualTo("1000 hub a");
        assertThat(text(take())).isEqualTo("1000 hub b");
        assertThat(text(take())).isEqualTo("1000 hub c");
        assertThat(take()).isEqualTo(new TraceEvent.PortLost(1000, "hub"));
        assertThat(inbox.take(0).event()).isNull();
    }

    @Test
    void theStateOfPortsIsThereForPeopleWithTheReason() {
        inbox.lost("hub", "there is no /dev/a");
        inbox.refused("hub", "/dev/a may not be opened by this user");
        inbox.found("gnss");
        inbox.bytes("gnss", bytes("a"));
        nowUs = 51_000;
        assertThat(inbox.ports())
                .containsExactly(
                        new Status.Port("hub", "/dev/a may not be opened by this user", -1, 0),
                        new Status.Port("gnss", null, 50_000, 0));
        assertThat(news)
                .containsExactly(
                        "1000 hub there is no /dev/a",
                        "1000 hub /dev/a may not be opened by this user",
                        "1000 gnss null");
    }

    @Test
    void aClosedInboxTakesNothingInAndGivesOutWhatItHas() throws Exception {
        inbox.bytes("hub", bytes("a"));
        inbox.close();
        inbox.bytes("hub", bytes("b"));
        inbox.lost("hub", "closed");
        assertThat(inbox.isDone()).isFalse();
        assertThat(text(take())).isEqualTo("1000 hub a");
        assertThat(inbox.isDone()).isTrue();
        assertThat(news).isEmpty();
    }

    private TraceEvent take() throws InterruptedException {
        TraceEvent event = inbox.take(0).event();
        assertThat(event).isNotNull();
        return event;
    }

    private static String text(TraceEvent event) {
        if (event instanceof TraceEvent.Dropped dropped) {
            return dropped.timeUs() + " " + dropped.port() + " dropped " + dropped.bytes();
        }
        TraceEvent.Bytes chunk = (TraceEvent.Bytes) event;
        return chunk.timeUs() + " " + chunk.port() + " " + new String(chunk.bytes(), StandardCharsets.US_ASCII);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
