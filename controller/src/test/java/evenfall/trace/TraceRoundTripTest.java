package evenfall.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TraceRoundTripTest {

    private static final int ROUNDS = 200;
    private static final String[] PORTS = {"gnss", "hub", "hub.2", "a-b_c", "X"};

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void whatIsWrittenIsReadPackedOrNot(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < ROUNDS; round++) {
            List<TraceEvent> events = events(random);
            String text = written(events, random);
            assertThat(text).matches("[\\x20-\\x7E\\n]*");

            List<TraceEvent> read = new ArrayList<>();
            TraceEnd end = TraceSource.open(Gzip.plain(text), "t").readAll(read::add);
            assertThat(read).as("round %d", round).isEqualTo(events);
            boolean closed = !events.isEmpty() && events.get(events.size() - 1) instanceof TraceEvent.End;
            assertThat(end).as("round %d", round).isEqualTo(closed ? new TraceEnd.Closed() : new TraceEnd.Open());

            List<TraceEvent> unpacked = new ArrayList<>();
            TraceSource.open(new ByteArrayInputStream(Gzip.pack(text)), "t").readAll(unpacked::add);
            assertThat(unpacked).as("round %d", round).isEqualTo(events);

            // The form is canonical: writing what was read gives the same text but for remarks.
            assertThat(written(read, null)).as("round %d", round).isEqualTo(text.replaceAll("(?m)^#.*\\n", ""));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {5, 6})
    void aTraceCutAnywhereGivesEverythingBeforeTheCutAndWhatCameOfASentence(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 20; round++) {
            List<TraceEvent> events = events(random);
            String text = written(events, null);
            for (int cut = 0; cut < text.length(); cut += 1 + random.nextInt(5)) {
                String head = text.substring(0, cut);
                int whole = (int) head.chars().filter(c -> c == '\n').count();
                int torn = cut - (head.lastIndexOf('\n') + 1);
                List<TraceEvent> read = new ArrayList<>();
                TraceEnd end = new TraceReader(Gzip.plain(head), "t").readAll(read::add);
                String tail = head.substring(cut - torn);
                assertThat(read.subList(0, whole))
                        .as("round %d cut %d", round, cut)
                        .isEqualTo(events.subList(0, whole));
                // Of a line that was torn comes what the decoder can judge, a sentence as far as it went, or nothing.
                if (tail.matches("\\d+ \\S+ (\\$.*|lost|found)|\\d+ - end")) {
                    StringBuilder again = new StringBuilder();
                    new TraceWriter(again).write(read.get(whole));
                    assertThat(again).as("round %d cut %d", round, cut).hasToString(tail + "\n");
                } else {
                    assertThat(read).as("round %d cut %d", round, cut).hasSize(whole);
                }
                boolean atAnEvent = torn == 0 || tail.matches(".* (\\$.*\\*..|lost|found)");
                TraceEnd expected = atAnEvent
                        ? new TraceEnd.Open()
                        : tail.endsWith(" - end") ? new TraceEnd.Closed() : new TraceEnd.TornTail(whole + 1, torn);
                assertThat(end).as("round %d cut %d", round, cut).isEqualTo(expected);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {7, 8})
    void aPackedTraceCutAnywhereGivesABeginningAndSaysThatItIsTorn(long seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 20; round++) {
            List<TraceEvent> events = events(random);
            byte[] packed = Gzip.pack(written(events, null));
            int most = 0;
            for (int cut = 2; cut < packed.length; cut += 1 + random.nextInt(7)) {
                List<TraceEvent> read = new ArrayList<>();
                TraceEnd end = TraceSource.open(new ByteArrayInputStream(packed, 0, cut), "t")
                        .readAll(read::add);
                assertThat(end).as("round %d cut %d", round, cut).isInstanceOf(TraceEnd.TornTail.class);
                int before = Math.max(0, read.size() - 1);
                assertThat(read.subList(0, before))
                        .as("round %d cut %d", round, cut)
                        .isEqualTo(events.subList(0, before));
                if (!read.isEmpty() && !read.get(before).equals(events.get(before))) {
                    assertThat(read.get(before))
                            .as("round %d cut %d", round, cut)
                            .isInstanceOf(TraceEvent.Bytes.class);
                    String cutShort = read.get(before).toString().replaceAll("%0D%0A$", "");
                    assertThat(events.get(before).toString())
                            .as("round %d cut %d", round, cut)
                            .startsWith(cutShort);
                }
                assertThat(read.size()).as("round %d cut %d", round, cut).isGreaterThanOrEqualTo(most);
                most = read.size();
            }
            List<TraceEvent> read = new ArrayList<>();
            TraceEnd end = TraceSource.open(new ByteArrayInputStream(packed, 0, packed.length - 1), "t")
                    .readAll(read::add);
            assertThat(read).as("round %d", round).isEqualTo(events);
            assertThat(end).as("round %d", round).isInstanceOf(TraceEnd.TornTail.class);
        }
    }

    private static String written(List<TraceEvent> events, SplittableRandom remarks) throws IOException {
        StringBuilder text = new StringBuilder();
        TraceWriter writer = new TraceWriter(text);
        for (TraceEvent event : events) {
            if (remarks != null && remarks.nextInt(4) == 0) {
                writer.remark("a remark\nof two lines");
            }
            writer.write(event);
        }
        return text.toString();
    }

    private static List<TraceEvent> events(SplittableRandom random) {
        List<TraceEvent> events = new ArrayList<>();
        long timeUs = random.nextLong(1_000_000);
        int count = random.nextInt(30);
        for (int i = 0; i < count; i++) {
            timeUs += random.nextBoolean() ? 0 : random.nextLong(1_000_000_000L);
            String port = PORTS[random.nextInt(PORTS.length)];
            events.add(
                    switch (random.nextInt(8)) {
                        case 0 -> new TraceEvent.PortLost(timeUs, port);
                        case 1 -> new TraceEvent.PortFound(timeUs, port);
                        case 2 -> new TraceEvent.Dropped(timeUs, port, 1 + random.nextLong(1L << 40));
                        default -> new TraceEvent.Bytes(timeUs, port, chunk(random));
                    });
        }
        if (random.nextBoolean()) {
            events.add(new TraceEvent.End(timeUs));
        }
        return events;
    }

    /** Whole sentences, parts and several of them, and any bytes. */
    private static byte[] chunk(SplittableRandom random) {
        if (random.nextBoolean()) {
            byte[] bytes = new byte[random.nextInt(40)];
            random.nextBytes(bytes);
            return bytes;
        }
        StringBuilder text = new StringBuilder();
        int sentences = 1 + random.nextInt(2);
        for (int i = 0; i < sentences; i++) {
            text.append("$PEVFQ,").append(random.nextInt(1_000_000)).append(",3 %41,*7F");
            text.append(random.nextInt(4) == 0 ? "\n" : "\r\n");
        }
        int from = random.nextInt(3) == 0 ? random.nextInt(text.length()) : 0;
        int to = random.nextInt(3) == 0 ? from + random.nextInt(text.length() - from) : text.length();
        return text.substring(from, to).getBytes(StandardCharsets.ISO_8859_1);
    }
}
