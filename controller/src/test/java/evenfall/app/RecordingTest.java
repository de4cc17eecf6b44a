package evenfall.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.message.Status;
import evenfall.trace.TraceEnd;
import evenfall.trace.TraceEvent;
import evenfall.trace.TraceSource;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordingTest {
    private final List<String> complaints = new ArrayList<>();

    @TempDir
    private Path folder;

    @Test
    void aRecordingThatExistsIsNeverWrittenOver() throws Exception {
        Path wanted = folder.resolve("monday.trace.gz");
        for (int i = 0; i < 3; i++) {
            TraceFiles.create(wanted).close();
        }
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("monday.trace.gz", "monday-2.trace.gz", "monday-3.trace.gz");
        }
        assertThat(TraceFiles.numbered(Path.of("a", "b"), 2)).isEqualTo(Path.of("a", "b-2"));
    }

    @Test
    void whatWasFlushedCanBeReadAlthoughTheFileWasNeverClosed() throws Exception {
        for (String name : List.of("plain.trace", "small.trace.gz")) {
            Path file = folder.resolve(name);
            Recorder recorder = new Recorder(TraceFiles.create(file), "remark", complaints::add);
            recorder.record(new TraceEvent.PortFound(1, "hub"));
            recorder.flushWhenDue(2_000_000);
            recorder.record(new TraceEvent.PortLost(2_000_001, "hub"));

            List<TraceEvent> read = new ArrayList<>();
            try (InputStream in = Files.newInputStream(file)) {
                TraceEnd end = TraceSource.open(in, name).readAll(read::add);
                assertThat(end).isNotInstanceOf(TraceEnd.Closed.class);
            }
            assertThat(read).as(name).containsExactly(new TraceEvent.PortFound(1, "hub"));
            recorder.close();
        }
        assertThat(complaints).isEmpty();
    }

    @Test
    void aFullCardEndsTheRecordingAndIsSaidOnce() {
        Recorder recorder = new Recorder(new FullCard(), "remark", complaints::add);
        assertThat(recorder.state()).isEqualTo(Status.Trace.WRITING);
        recorder.flushWhenDue(2_000_000);
        recorder.record(new TraceEvent.PortLost(2_000_001, "hub"));
        recorder.close();
        assertThat(recorder.state()).isEqualTo(Status.Trace.FAILED);
        assertThat(complaints).containsExactly("the recording failed and has ended: No space left on device");
    }

    @Test
    void withoutAFileNothingIsRecorded() {
        Recorder recorder = new Recorder(null, "remark", complaints::add);
        recorder.record(new TraceEvent.End(1));
        recorder.close();
        assertThat(recorder.state()).isEqualTo(Status.Trace.OFF);
        assertThat(complaints).isEmpty();
    }

    @Test
    void theOrderOfTheRecordingIsTheOrderOfRecording() {
        StringWriter text = new StringWriter();
        Recorder recorder = new Recorder(text, "of a test", complaints::add);
        recorder.record(new TraceEvent.Bytes(5, "hub", "$A*41\r\n".getBytes(StandardCharsets.US_ASCII)));
        recorder.record(new TraceEvent.End(7));
        recorder.close();
        assertThat(text.toString()).isEqualTo("# of a test\n5 hub $A*41\n7 - end\n");
    }

    private static final class FullCard extends Writer {
        @Override
        public void write(char[] buffer, int from, int length) {}

        @Override
        public void flush() throws IOException {
            throw new IOException("No space left on device");
        }

        @Override
        public void close() {}
    }
}
