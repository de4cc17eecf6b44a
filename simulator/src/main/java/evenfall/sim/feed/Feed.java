package evenfall.sim.feed;

import evenfall.sim.world.Emission;
import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.function.Consumer;

/** Takes emissions in the order of time. Used by one thread; closing may come from another. */
public interface Feed extends Consumer<Emission>, Closeable {
    /**
     * Passes an emission on, or drops and counts it; comes back within a fraction of a second either way.
     *
     * @throws UncheckedIOException when its end is broken for good: a full disk, a device that is gone
     */
    @Override
    void accept(Emission emission);

    /** Bytes that nobody took. */
    long droppedBytes();

    @Override
    void close() throws IOException;
}
