package evenfall.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutboxTest {
    private final Outbox outbox = new Outbox(6, 2);

    @Test
    void messagesLeaveInOrderAsFarAsTheWindowReaches() {
        add("a", "1");
        add("b", "2");
        add("c", "3");
        Letter first = outbox.next();
        Letter second = outbox.next();
        assertThat(List.of(text(first), text(second))).containsExactly("a=1", "b=2");
        assertThat(outbox.next()).as("the window holds two").isNull();

        outbox.acknowledged(second.id());
        assertThat(text(outbox.next())).isEqualTo("c=3");
        assertThat(outbox.isEmpty()).isFalse();
    }

    @Test
    void whatWasNotAcknowledgedGoesAgainOverTheNextConnection() {
        add("a", "1");
        add("b", "2");
        outbox.acknowledged(outbox.next().id());
        outbox.next();
        outbox.startOver("status");
        assertThat(drained()).containsExactly("b=2");
    }

    @Test
    void whatTheBrokerShouldRetainIsSaidAgainWithTheStatusFirst() {
        retain("alert/x", "stands");
        retain("alert/y", "stands");
        retain("status", "running");
        assertThat(drained()).hasSize(3);
        retain("alert/y", "");
        add("alert/y", "cleared");

        outbox.startOver("status");

        assertThat(drained()).containsExactly("status=running", "alert/x=stands", "alert/y=", "alert/y=cleared");
    }

    @Test
    void aNewerStatusTakesThePlaceOfOneThatHasNotLeft() {
        outbox.add("status", bytes("1"), true, true);
        add("a", "x");
        outbox.add("status", bytes("2"), true, true);
        outbox.startOver("status");
        assertThat(drained()).containsExactly("status=2", "a=x");
    }

    @Test
    void aFullOutboxGivesUpWhatNobodyMissesMostAndCountsIt() {
        retain("alert/x", "stands");
        add("alert/x", "cleared");
        for (int i = 0; i < 5; i++) {
            add("word", Integer.toString(i));
        }
        assertThat(outbox.dropped()).isEqualTo(1);
        assertThat(drained()).containsExactly("alert/x=stands", "word=0", "word=1", "word=2", "word=3", "word=4");
    }

    /** Whatever is dropped and however often the connection breaks, the broker ends up retaining the last word on every topic. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void theBrokerEndsUpWithTheLastWordOnEveryTopic(long seed) {
        Random random = new Random(seed);
        Outbox box = new Outbox(20, 5);
        Map<String, String> wanted = new TreeMap<>();
        Map<String, String> broker = new TreeMap<>();
        for (int i = 0; i < 2000; i++) {
            String topic = "topic/" + random.nextInt(8);
            switch (random.nextInt(6)) {
                case 0, 1 -> {
                    wanted.put(topic, Integer.toString(i));
                    box.add(topic, bytes(Integer.toString(i)), true, false);
                }
                case 2 -> {
                    wanted.remove(topic);
                    box.add(topic, bytes(""), true, false);
                }
                case 3 -> box.add(topic, bytes("passing"), false, false);
                case 4 -> deliver(box, broker, random.nextInt(6));
                default -> {
                    if (random.nextInt(10) == 0) {
                        broker.clear();
                        box.startOver("topic/0");
                    }
                }
            }
        }
        deliver(box, broker, Integer.MAX_VALUE);
        assertThat(broker).as("seed %d", seed).isEqualTo(wanted);
        assertThat(box.dropped()).as("seed %d must meet a full outbox", seed).isPositive();
    }

    private static void deliver(Outbox box, Map<String, String> broker, int most) {
        for (int i = 0; i < most; i++) {
            Letter letter = box.next();
            if (letter == null) {
                return;
            }
            if (letter.retained() && letter.payload().length == 0) {
                broker.remove(letter.topic());
            } else if (letter.retained()) {
                broker.put(letter.topic(), new String(letter.payload(), StandardCharsets.UTF_8));
            }
            box.acknowledged(letter.id());
        }
    }

    private List<String> drained() {
        List<String> texts = new ArrayList<>();
        for (Letter letter = outbox.next(); letter != null; letter = outbox.next()) {
            texts.add(text(letter));
            outbox.acknowledged(letter.id());
        }
        return texts;
    }

    private void add(String topic, String payload) {
        outbox.add(topic, bytes(payload), false, false);
    }

    private void retain(String topic, String payload) {
        outbox.add(topic, bytes(payload), true, false);
    }

    private static String text(Letter letter) {
        return letter.topic() + "=" + new String(letter.payload(), StandardCharsets.UTF_8);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
