package evenfall.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The courier against a broker that does as it is told, on a time of the test's own. */
class CourierTest {
    private final Outbox outbox = new Outbox(100, 3);
    private final List<Link> links = new ArrayList<>();
    private @Nullable String refusal;
    private boolean acknowledges = true;
    private final Courier courier =
            new Courier(this::dial, () -> bytes("gone"), "status", "alert/+/+", outbox, () -> {});
    private long nowMs = -5;

    @Test
    void aBrokerThatIsNotThereIsTriedAgainAfterWaitsThatGrow() {
        refusal = "Connection refused";
        List<Long> attempts = new ArrayList<>();
        long start = nowMs;
        for (; nowMs < start + 10_000; nowMs += 10) {
            int before = dials;
            step();
            if (dials > before) {
                attempts.add(nowMs - start);
            }
        }
        assertThat(attempts).containsExactly(0L, 250L, 750L, 1750L, 3750L, 7750L);
        assertThat(courier.whyDown()).isEqualTo("Connection refused");

        refusal = null;
        nowMs += 5000;
        step();
        assertThat(courier.whyDown()).isNull();
    }

    @Test
    void afterABreakTheStatusAndWhatStandsAreSaidAgain() {
        outbox.add("status", bytes("running"), true, true);
        outbox.add("alert/wing-low/left", bytes("stands"), true, false);
        settle();
        links.get(0).events.lost("connection reset");
        step();
        assertThat(courier.whyDown()).isEqualTo("connection reset");
        assertThat(links.get(0).abandoned).isTrue();

        nowMs += 250;
        settle();

        assertThat(links).hasSize(2);
        assertThat(links.get(1).sent)
                .containsExactly("1 status=running retained", "1 alert/wing-low/left=stands retained");
    }

    @Test
    void aConnectionThatAcknowledgesNothingIsGivenUpAndNothingIsLost() {
        acknowledges = false;
        for (int i = 0; i < 5; i++) {
            outbox.add("alert", bytes("word" + i), false, false);
        }
        long start = nowMs;
        while (links.isEmpty() || !links.get(0).abandoned) {
            step();
            nowMs += 100;
        }
        assertThat(nowMs - start).isBetween(8_000L, 8_400L);
        assertThat(courier.whyDown()).contains("8 s");
        assertThat(links.get(0).sent).as("the window").hasSize(3);

        acknowledges = true;
        nowMs += 250;
        settle();
        assertThat(links.get(1).sent)
                .containsExactly("1 alert=word0", "1 alert=word1", "1 alert=word2", "1 alert=word3", "1 alert=word4");
        assertThat(courier.isIdle()).isTrue();
    }

    @Test
    void onlyTheNewestLiveMessageWaitsAndOnlyOneIsOnItsWay() {
        acknowledges = false;
        courier.offerNewest("live", bytes("1"));
        step();
        courier.offerNewest("live", bytes("2"));
        step();
        courier.offerNewest("live", bytes("3"));
        step();
        assertThat(links.get(0).sent).containsExactly("0 live=1");
        links.get(0).events.delivered(0);
        step();
        step();
        assertThat(links.get(0).sent).containsExactly("0 live=1", "0 live=3");
    }

    @Test
    void whatAnEarlierLifeLeftAtTheBrokerIsTakenAwayAndWhatStandsIsNot() {
        outbox.add("alert/wing-low/left", bytes("stands"), true, false);
        settle();
        assertThat(links.get(0).subscribed).containsExactly("alert/+/+");
        links.get(0).events.foundRetained("alert/wing-low/left");
        links.get(0).events.foundRetained("alert/rate-high/boom");
        settle();
        assertThat(links.get(0).sent)
                .containsExactly("1 alert/wing-low/left=stands retained", "1 alert/rate-high/boom= retained");
        nowMs += 2100;
        step();
        assertThat(links.get(0).subscribed).isEmpty();
    }

    @Test
    void aLibraryThatThrowsCostsTheConnectionAndNothingElse() {
        outbox.add("alert", bytes("word"), false, false);
        acknowledges = false;
        step();
        links.get(0).broken = true;
        outbox.add("alert", bytes("another"), false, false);
        step();
        assertThat(courier.whyDown()).contains("IllegalStateException");
        acknowledges = true;
        nowMs += 250;
        settle();
        assertThat(links.get(1).sent).containsExactly("1 alert=word", "1 alert=another");
    }

    @Test
    void anAcknowledgementOfAConnectionThatWasGivenUpCountsForNothing() {
        outbox.add("alert", bytes("word"), false, false);
        acknowledges = false;
        step();
        Link first = links.get(0);
        first.events.lost("reset");
        step();
        first.events.delivered(1);
        acknowledges = true;
        nowMs += 250;
        settle();
        assertThat(links.get(1).sent).containsExactly("1 alert=word");
    }

    @Test
    void partingIsAsAgreedSoThatTheLastWillStaysUnsaid() {
        step();
        courier.part();
        assertThat(links.get(0).parted).isTrue();
        assertThat(links.get(0).abandoned).isFalse();
        assertThat(links.get(0).will).isEqualTo("gone");
    }

    private int dials;

    private BrokerLink dial(byte[] will, BrokerLink.Events events) throws BrokerLink.LinkException {
        dials++;
        if (refusal != null) {
            throw new BrokerLink.LinkException(refusal);
        }
        Link link = new Link(new String(will, StandardCharsets.UTF_8), events);
        links.add(link);
        return link;
    }

    private void step() {
        courier.step(TimeUnit.MILLISECONDS.toNanos(nowMs));
    }

    private void settle() {
        for (int i = 0; i < 10; i++) {
            step();
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private final class Link implements BrokerLink {
        private final String will;
        private final Events events;
        private final List<String> sent = new ArrayList<>();
        private final List<String> subscribed = new ArrayList<>();
        private boolean abandoned;
        private boolean parted;
        private boolean broken;

        Link(String will, Events events) {
            this.will = will;
            this.events = events;
        }

        @Override
        public boolean send(long id, String topic, byte[] payload, boolean retained, int qos) {
            if (broken) {
                throw new IllegalStateException("scripted");
            }
            sent.add(qos + " " + topic + "=" + new String(payload, StandardCharsets.UTF_8)
                    + (retained ? " retained" : ""));
            if (acknowledges) {
                events.delivered(id);
            }
            return true;
        }

        @Override
        public void subscribe(String filter) {
            subscribed.add(filter);
        }

        @Override
        public void unsubscribe(String filter) {
            subscribed.remove(filter);
        }

        @Override
        public void part() {
            parted = true;
        }

        @Override
        public void abandon() {
            abandoned = true;
        }
    }
}
