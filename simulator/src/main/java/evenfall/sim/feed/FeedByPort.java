package evenfall.sim.feed;

import evenfall.sim.world.Emission;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** A feed for each port by its name; what comes for a port without one is dropped and counted. */
public final class FeedByPort implements Feed {
    private final TreeMap<String, Feed> feeds;
    private long strayBytes;

    public FeedByPort(Map<String, ? extends Feed> feeds) {
        this.feeds = new TreeMap<>(feeds);
    }

    @Override
    public void accept(Emission emission) {
        Feed feed = feeds.get(emission.port());
        if (feed == null) {
            strayBytes += emission.bytes().length;
        } else {
            feed.accept(emission);
        }
    }

    @Override
    public long droppedBytes() {
        long sum = strayBytes;
        for (Feed feed : feeds.values()) {
            sum += feed.droppedBytes();
        }
        return sum;
    }

    @Override
    public void close() throws IOException {
        @Nullable IOException first = null;
        for (Feed feed : feeds.values()) {
            try {
                feed.close();
            } catch (IOException e) {
                first = first == null ? e : first;
            }
        }
        if (first != null) {
            throw first;
        }
    }
}
