package evenfall.trace;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/** A source that must hold something: to replay nothing and say that all is well would be a lie. */
final class NotEmpty implements TraceSource {
    private final TraceSource source;
    private final String name;
    private boolean seen;

    NotEmpty(TraceSource source, String name) {
        this.source = source;
        this.name = name;
    }

    @Override
    public @Nullable TraceEvent next() throws IOException {
        TraceEvent event = source.next();
        if (!seen && (event == null || event instanceof TraceEvent.End)) {
            throw new TraceFormatException(
                    name,
                    1,
                    "the file has no sentence, nor anything else that happened",
                    "a trace with one event or more, or a receiver's raw log");
        }
        seen = true;
        return event;
    }

    @Override
    public TraceEnd end() {
        return source.end();
    }
}
