package evenfall.bench.run;

import evenfall.bench.received.Message;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.sim.feed.TraceFeed;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What is kept of a run, in the folder that was asked for; nothing where none was. */
final class Keeping implements AutoCloseable {
    private final Optional<Path> folder;
    private @Nullable TraceFeed trace;

    private Keeping(Optional<Path> folder) {
        this.folder = folder;
    }

    static Keeping in(Optional<Path> folder) throws ConfigException {
        if (folder.isPresent()) {
            try {
                Files.createDirectories(folder.get());
            } catch (IOException e) {
                throw ConfigException.ofOption(
                        "--keep",
                        "the folder " + folder.get() + " cannot be made (" + FileCheck.reason(e) + ")",
                        "a folder, or the path of one that can be made");
            }
        }
        return new Keeping(folder);
    }

    void text(String name, String text) throws IOException {
        if (folder.isPresent()) {
            Files.writeString(folder.get().resolve(name), text);
        }
    }

    /** A trace of the simulator's emissions; null where nothing is kept. */
    @Nullable
    TraceFeed trace(Scenario scenario) throws IOException {
        if (folder.isPresent()) {
            trace = TraceFeed.to(folder.get().resolve("trace.txt.gz"));
            trace.remark("scenario " + scenario.name() + ", seed " + scenario.seed() + ", outlet "
                    + scenario.belief().outlet().id() + "; simulated");
        }
        return trace;
    }

    /** One line a message: arrival in microseconds, topic, payload. */
    void messages(List<Message> messages) throws IOException {
        if (folder.isEmpty()) {
            return;
        }
        StringBuilder text = new StringBuilder();
        for (Message message : messages) {
            text.append(message.arrivalUs())
                    .append(' ')
                    .append(message.topic())
                    .append(' ')
                    .append(message.payload())
                    .append('\n');
        }
        Files.write(folder.get().resolve("messages.txt"), text.toString().getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void close() throws IOException {
        if (trace != null) {
            trace.close();
        }
    }
}
