package evenfall.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TraceFormTest {

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static List<TraceEvent> read(String text) throws IOException {
        List<TraceEvent> events = new ArrayList<>();
        new TraceReader(Gzip.plain(text), "field.trace").readAll(events::add);
        return events;
    }

    @Test
    void everyEventHasItsLine() throws IOException {
        StringBuilder text = new StringBuilder();
        TraceWriter writer = new TraceWriter(text);
        writer.remark("invented\n\nfor a test");
        writer.write(new TraceEvent.PortFound(0, "hub"));
        writer.write(new TraceEvent.Bytes(100_000, "hub", ascii("$PEVFQ,100000,0,*58\r\n")));
        writer.write(new TraceEvent.Bytes(100_000, "gnss", ascii("$GPRMC,,V")));
        writer.write(new TraceEvent.Bytes(100_020, "gnss", new byte[] {'a', ' ', '%', 0, (byte) 0xFF, '\n'}));
        writer.write(new TraceEvent.Bytes(100_030, "gnss", ascii("$A*41\n")));
        writer.write(new TraceEvent.Bytes(100_040, "gnss", ascii("$A*41\r\n$A*41\r\n")));
        writer.write(new TraceEvent.Bytes(100_050, "gnss", new byte[0]));
        writer.write(new TraceEvent.Dropped(200_000, "hub", 4096));
        writer.write(new TraceEvent.PortLost(200_000, "hub"));
        writer.write(new TraceEvent.End(300_000));
        assertThat(text).hasToString("""
                        # invented
                        #
                        # for a test
                        0 hub found
                        100000 hub $PEVFQ,100000,0,*58
                        100000 gnss bytes:$GPRMC,,V
                        100020 gnss bytes:a%20%25%00%FF%0A
                        100030 gnss bytes:$A*41%0A
                        100040 gnss bytes:$A*41%0D%0A$A*41%0D%0A
                        100050 gnss bytes:
                        200000 hub dropped:4096
                        200000 hub lost
                        300000 - end
                        """);
    }

    @Test
    void linesThatCameThroughAnEditorAreReadToo() throws IOException {
        assertThat(read("# remark\r\n\r\n0 hub found\r\n\n5 hub $A*41\r\n7 - end\r\n# after\r\n"))
                .containsExactly(
                        new TraceEvent.PortFound(0, "hub"),
                        new TraceEvent.Bytes(5, "hub", ascii("$A*41\r\n")),
                        new TraceEvent.End(7));
    }

    @Test
    void escapesAreReadInEitherCase() throws IOException {
        assertThat(read("0 hub bytes:%0d%0A%fF\n"))
                .containsExactly(new TraceEvent.Bytes(0, "hub", new byte[] {'\r', '\n', (byte) 0xFF}));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "5 hub begone              | 'begone'; allowed: a sentence that starts with $",
                "5 hub lost now            | 'lost now'; allowed: a sentence",
                "5 hub                     | not an event: '5 hub'; allowed: <microseconds> <port> <sentence>",
                "4 hub lost                | time 4 after 5; allowed: times that never fall",
                "-1 hub lost               | time '-1'; allowed: microseconds, digits only",
                "1e6 hub lost              | time '1e6'; allowed: microseconds",
                "9999999999999999999 h lost| time '9999999999999999999'; allowed: microseconds",
                "5 /dev/tty lost           | port name '/dev/tty'; allowed: a letter or digit",
                "5  hub lost               | port name ''; allowed",
                "5 hub dropped:0           | 'dropped:0'; allowed: dropped: and a number of bytes, 1 or more",
                "5 hub dropped:            | 'dropped:'; allowed",
                "5 hub bytes:%0            | bytes that are not escaped as they must be; allowed: printable ASCII",
                "5 hub bytes:%GG           | bytes that are not escaped",
                "5 hub bytes:a b           | bytes that are not escaped",
                "5 - finish                | 'finish' without a port; allowed: end",
            })
    void aBadLineIsNamedWithItsPlaceAndWhatIsAllowed(String line, String message) throws IOException {
        TraceReader reader =
                new TraceReader(Gzip.plain("# one\n5 hub found\n" + line + "\n6 hub lost\n"), "field.trace");
        assertThat(reader.next()).isEqualTo(new TraceEvent.PortFound(5, "hub"));
        TraceFormatException thrown = catchThrowableOfType(TraceFormatException.class, reader::next);
        assertThat(thrown).hasMessageStartingWith("field.trace:3: " + message).hasMessageContaining("; allowed: ");
        assertThat(thrown.getMessage()).doesNotContain("\n");
        assertThat(thrown.line()).isEqualTo(3);
    }

    @Test
    void aSentenceThatIsNotPrintableIsNamed() {
        assertThatThrownBy(() -> read("0 hub $A\tB\n"))
                .isInstanceOf(TraceFormatException.class)
                .hasMessage("field.trace:1: a sentence with a character that is not printable ASCII; "
                        + "allowed: bytes:<escaped> for such bytes");
    }

    @Test
    void nothingFollowsTheEnd() throws IOException {
        assertThatThrownBy(() -> read("0 - end\n0 hub lost\n"))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:2: a line after the end");
        TraceWriter writer = new TraceWriter(new StringBuilder());
        writer.write(new TraceEvent.End(0));
        assertThatThrownBy(() -> writer.write(new TraceEvent.End(0))).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void anEndlessLineIsRefusedAndNotKept() {
        assertThatThrownBy(() -> read("0 hub bytes:" + "A".repeat(300_000) + "\n"))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:1: a line of more than");
        assertThatThrownBy(() -> read("0 hub bytes:" + "A".repeat(65_537) + "\n"))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:1: a chunk of 65537 bytes");
        assertThatThrownBy(() -> read("0 hub $" + "A".repeat(65_534) + "\n"))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:1: a sentence of 65535 characters");
    }

    @Test
    void theLongestChunkGoesThereAndBack() throws IOException {
        StringBuilder text = new StringBuilder();
        // The latest time that a first event may have: 7 days, twelve digits.
        TraceEvent longest = new TraceEvent.Bytes(604_800_000_000L, "hub", new byte[TraceEvent.Bytes.LONGEST]);
        new TraceWriter(text).write(longest);
        assertThat(read(text.toString())).containsExactly(longest);
    }

    @Test
    void damagedCompressedDataAreNamedAfterTheLinesBeforeThem() throws IOException {
        byte[] packed = Gzip.pack("0 hub found\n".repeat(50));
        packed[packed.length - 8] ^= 1; // the trailer's own checksum
        List<TraceEvent> events = new ArrayList<>();
        TraceSource source = TraceSource.open(new ByteArrayInputStream(packed), "field.trace");
        assertThatThrownBy(() -> source.readAll(events::add))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:51: the compressed data are damaged here")
                .hasMessageEndingWith("; allowed: gzip data or plain text");
        assertThat(events).hasSize(50);

        packed[2] = 7; // no such method
        assertThatThrownBy(() -> TraceSource.open(new ByteArrayInputStream(packed), "field.trace")
                        .readAll(events::add))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:1: the compressed data are damaged here");
    }

    @Test
    void howATraceEndedIsKnownOnlyAtItsEnd() throws IOException {
        TraceReader reader = new TraceReader(Gzip.plain("0 hub found\n3 hub lo"), "field.trace");
        assertThatThrownBy(reader::end).isInstanceOf(IllegalStateException.class);
        assertThat(reader.next()).isEqualTo(new TraceEvent.PortFound(0, "hub"));
        assertThat(reader.next()).isNull();
        assertThat(reader.next()).isNull();
        assertThat(reader.end()).isEqualTo(new TraceEnd.TornTail(2, 8));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3 hub $A*41   | $A*41%0D%0A | true",
                "3 hub $A*4    | $A*4%0D%0A  | false",
                "3 hub $       | $%0D%0A     | false",
                "3 hub bytes:$A|             | false",
                "3 hub dropped:1|            | false",
                "3 hu          |             | false",
                "3             |             | false",
            })
    void ofALastLineWithoutALineEndASentenceIsHandedOn(String line, String bytes, boolean whole) throws IOException {
        TraceReader reader = new TraceReader(Gzip.plain("0 hub found\n" + line), "field.trace");
        List<TraceEvent> events = new ArrayList<>();
        TraceEnd end = reader.readAll(events::add);
        assertThat(events).hasSize(bytes == null ? 1 : 2);
        if (bytes != null) {
            assertThat(events.get(1)).hasToString("3 hub " + bytes);
        }
        assertThat(end).isEqualTo(whole ? new TraceEnd.Open() : new TraceEnd.TornTail(2, line.length()));
    }

    @Test
    void aLastLineWithoutALineEndMayBeTheEndLine() throws IOException {
        assertThat(read("0 hub found\n3 - end")).endsWith(new TraceEvent.End(3));
        assertThatThrownBy(() -> read("0 - end\n0 hub lost"))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:2: a line after the end");
    }

    @ParameterizedTest
    @CsvSource({
        "0, 604800000000, true",
        "0, 604800000001, false",
        "5, 604800000005, true",
        "5, 999999999999999999, false",
        "2591999999999, 2678400000000, true",
        "2591999999999, 2678400000001, false",
    })
    void timesThatAreTooFarOffAreNeitherReadNorWritten(long firstUs, long thenUs, boolean allowed) throws IOException {
        StringBuilder text = new StringBuilder();
        TraceWriter writer = new TraceWriter(text);
        // Steps of a day up to the first time: no gap of its own.
        for (long timeUs = 0; timeUs < firstUs; timeUs += 86_400_000_000L) {
            writer.write(new TraceEvent.PortFound(timeUs, "hub"));
        }
        writer.write(new TraceEvent.PortFound(firstUs, "hub"));
        String line = thenUs + " hub lost\n";
        if (allowed) {
            writer.write(new TraceEvent.PortLost(thenUs, "hub"));
            assertThat(read(text.toString())).endsWith(new TraceEvent.PortLost(thenUs, "hub"));
            return;
        }
        assertThatThrownBy(() -> writer.write(new TraceEvent.PortLost(thenUs, "hub")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("is too far off; allowed: at most ");
        long number = text.chars().filter(c -> c == '\n').count() + 1;
        assertThatThrownBy(() -> read(text + line))
                .isInstanceOf(TraceFormatException.class)
                .hasMessageStartingWith("field.trace:" + number + ": time " + thenUs + " after " + firstUs)
                .hasMessageContaining("is too far off; allowed: at most ");
    }

    @Test
    void aByteOrderMarkIsPassedOver() throws IOException {
        String marked = "\u00EF\u00BB\u00BF0 hub found\n";
        assertThat(read(marked)).containsExactly(new TraceEvent.PortFound(0, "hub"));
        for (InputStream in : new InputStream[] {
            Gzip.plain("\u00EF\u00BB\u00BF$A*41\n"), new ByteArrayInputStream(Gzip.pack("\u00EF\u00BB\u00BF$A*41\n"))
        }) {
            TraceSource log = TraceSource.open(in, "log");
            assertThat(log).isInstanceOf(RawLog.class);
            assertThat(log.next()).hasToString("0 gnss $A*41%0A");
        }
        assertThat(TraceReader.isRawLog(Gzip.plain("\u00EF\u00BB"))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "\n\n", "# nothing\n", "5000000 - end\n", "5 hub fo"})
    void aTraceInWhichNothingHappensIsRefusedWhereThatMatters(String text) throws IOException {
        TraceSource source = TraceSource.open(Gzip.plain(text), "field.trace").notEmpty("field.trace");
        assertThatThrownBy(source::next)
                .isInstanceOf(TraceFormatException.class)
                .hasMessage("field.trace:1: the file has no sentence, nor anything else that happened;"
                        + " allowed: a trace with one event or more, or a receiver's raw log");
        TraceSource full =
                TraceSource.open(Gzip.plain("5 hub found\n7 - end\n"), "t").notEmpty("t");
        List<TraceEvent> events = new ArrayList<>();
        assertThat(full.readAll(events::add)).isEqualTo(new TraceEnd.Closed());
        assertThat(events).hasSize(2);
    }

    @Test
    void timesThatFallAreNotWritten() throws IOException {
        TraceWriter writer = new TraceWriter(new StringBuilder());
        writer.write(new TraceEvent.PortFound(5, "hub"));
        writer.write(new TraceEvent.PortLost(5, "hub"));
        assertThatThrownBy(() -> writer.write(new TraceEvent.PortLost(4, "hub")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("time 4 µs after 5 µs; times never fall");
    }

    @Test
    void eventsThatCouldNotBeWrittenCannotBeMade() {
        assertThatThrownBy(() -> new TraceEvent.End(-1)).isInstanceOf(IllegalArgumentException.class);
        for (String port : new String[] {"", "-", "#a", "a b", ".a", "ä", "a".repeat(33)}) {
            assertThatThrownBy(() -> new TraceEvent.PortLost(0, port))
                    .as(port)
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> new TraceEvent.Dropped(0, "hub", 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new TraceEvent.Bytes(0, "hub", new byte[TraceEvent.Bytes.LONGEST + 1]))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void chunksAreEqualWhenTheirBytesAre() {
        TraceEvent.Bytes one = new TraceEvent.Bytes(1, "hub", new byte[] {1, 2});
        TraceEvent.Bytes same = new TraceEvent.Bytes(1, "hub", new byte[] {1, 2});
        assertThat(one).isEqualTo(same).hasSameHashCodeAs(same).hasToString("1 hub %01%02");
        assertThat(one)
                .isNotEqualTo(new TraceEvent.Bytes(1, "hub", new byte[] {1, 3}))
                .isNotEqualTo(new TraceEvent.Bytes(2, "hub", new byte[] {1, 2}))
                .isNotEqualTo(new TraceEvent.Bytes(1, "gnss", new byte[] {1, 2}));
    }
}
