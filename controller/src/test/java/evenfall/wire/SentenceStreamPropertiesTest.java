package evenfall.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold for any bytes in any chunks; a failing seed is in the test's name. */
class SentenceStreamPropertiesTest {

    private static final int ROUNDS = 300;

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void everyDollarIsCountedOnceAndChunksChangeNothing(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < ROUNDS; round++) {
            byte[] bytes = damagedTraffic(random);
            SeenSentences whole = new SeenSentences();
            WireCounts inOne = run(whole, bytes, bytes.length, random);

            long dollars = 0;
            for (byte b : bytes) {
                dollars += b == '$' ? 1 : 0;
            }
            assertThat(inOne.sentences()).as("round %d", round).isEqualTo(dollars);
            assertThat(inOne.sentences())
                    .as("round %d", round)
                    .isEqualTo(inOne.accepted() + inOne.ignored() + inOne.rejected());
            assertThat(whole.all).as("round %d", round).hasSize((int) inOne.accepted());

            for (int longest : new int[] {1, 2, 7, 100}) {
                SeenSentences chunked = new SeenSentences();
                assertThat(run(chunked, bytes, longest, random))
                        .as("round %d, chunks up to %d", round, longest)
                        .isEqualTo(inOne);
                assertThat(chunked.all)
                        .as("round %d, chunks up to %d", round, longest)
                        .isEqualTo(whole.all);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 5, 8})
    void theEnvelopeIsJudgedAsAPlainReadingOfItsRulesDoes(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        PlainReading total = new PlainReading();
        for (int round = 0; round < ROUNDS; round++) {
            byte[] bytes = damagedTraffic(random);
            WireCounts counts = run(new SeenSentences(), bytes, bytes.length, random);
            PlainReading plain = new PlainReading();
            plain.read(new String(bytes, StandardCharsets.ISO_8859_1));
            assertThat(counts.rejectedChecksum()).as("round %d", round).isEqualTo(plain.checksum);
            assertThat(counts.rejectedTooLong()).as("round %d", round).isEqualTo(plain.tooLong);
            assertThat(counts.otherLines()).as("round %d", round).isEqualTo(plain.otherLines);
            assertThat(counts.otherBytes()).as("round %d", round).isEqualTo(plain.otherBytes);
            assertThat(counts.accepted() + counts.ignored() + counts.rejectedMalformed())
                    .as("round %d", round)
                    .isEqualTo(plain.sound + plain.malformed);
            assertThat(counts.accepted() + counts.ignored())
                    .as("round %d", round)
                    .isLessThanOrEqualTo(plain.sound);
            total.add(plain);
        }
        // The generator must reach every case, or the above says nothing.
        assertThat(total.sound).isPositive();
        assertThat(total.malformed).isPositive();
        assertThat(total.checksum).isPositive();
        assertThat(total.tooLong).isPositive();
        assertThat(total.otherLines).isPositive();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void noSingleFlippedBitGetsThrough(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (GoldenTable.Row row : GoldenTable.rows()) {
            if (!row.isDecoded()) {
                continue;
            }
            byte[] good = (row.sentence() + "\r\n").getBytes(StandardCharsets.US_ASCII);
            SeenSentences.Seen expected = SeenSentences.of(row.sentence()).only();
            for (int i = 0; i < row.sentence().length(); i++) {
                byte[] bad = good.clone();
                bad[i] ^= (byte) (1 << random.nextInt(8));
                SeenSentences seen = new SeenSentences();
                run(seen, bad, bad.length, random);
                // Only the case of a checksum's letter may change without harm.
                boolean sameDigit =
                        i >= row.sentence().length() - 2 && Character.digit(bad[i], 16) == Character.digit(good[i], 16);
                assertThat(seen.all)
                        .as("seed %d, %s with character %d flipped to %d", seed, row.sentence(), i, bad[i])
                        .isEqualTo(sameDigit ? List.of(expected) : List.of());
            }
        }
    }

    private static WireCounts run(SeenSentences seen, byte[] bytes, int longest, SplittableRandom random) {
        SentenceStream stream = new SentenceStream(seen);
        int at = 0;
        while (at < bytes.length) {
            int length = Math.min(bytes.length - at, 1 + random.nextInt(longest));
            stream.accept(bytes, at, length);
            at += length;
        }
        stream.cut();
        return stream.counts();
    }

    /** Golden sentences, most of them whole, with bytes lost, doubled, changed and invented. */
    private static byte[] damagedTraffic(SplittableRandom random) {
        List<GoldenTable.Row> rows = GoldenTable.rows();
        StringBuilder text = new StringBuilder();
        int pieces = random.nextInt(12);
        for (int i = 0; i < pieces; i++) {
            StringBuilder piece = new StringBuilder(
                            rows.get(random.nextInt(rows.size())).sentence())
                    .append(random.nextBoolean() ? "\r\n" : "\n");
            int damages = random.nextInt(3);
            for (int d = 0; d < damages && piece.length() > 0; d++) {
                int at = random.nextInt(piece.length());
                switch (random.nextInt(6)) {
                    case 0 -> piece.deleteCharAt(at);
                    case 1 -> piece.insert(at, anyCharacter(random));
                    case 2 -> piece.setCharAt(at, anyCharacter(random));
                    case 3 -> piece.setLength(at);
                    case 4 -> piece.insert(at, "7".repeat(random.nextInt(90)));
                    default -> piece.insert(at, "\r");
                }
            }
            text.append(piece);
        }
        return text.toString().getBytes(StandardCharsets.ISO_8859_1);
    }

    private static char anyCharacter(SplittableRandom random) {
        String likely = "$*,\r\n0AF ";
        return random.nextBoolean() ? likely.charAt(random.nextInt(likely.length())) : (char) random.nextInt(256);
    }

    /** The envelope's rules once more, with strings and regular expressions, for whole input that is cut at its end. */
    private static final class PlainReading {

        private static final Pattern PIECE = Pattern.compile("\\$[^$\\n]*(\\n|(?=\\$)|$)|[^$\\n]*\\n|[^$\\n]+");
        private static final Pattern SOUND = Pattern.compile("\\$([^,*][^*]*)\\*([0-9A-Fa-f]{2})");

        long sound;
        long malformed;
        long checksum;
        long tooLong;
        long otherLines;
        long otherBytes;

        void read(String text) {
            List<String> pieces = new ArrayList<>();
            Matcher matcher = PIECE.matcher(text);
            while (matcher.find()) {
                if (!matcher.group().isEmpty()) {
                    pieces.add(matcher.group());
                }
            }
            assertThat(String.join("", pieces)).isEqualTo(text);
            pieces.forEach(this::judge);
        }

        void add(PlainReading other) {
            sound += other.sound;
            malformed += other.malformed;
            checksum += other.checksum;
            tooLong += other.tooLong;
            otherLines += other.otherLines;
            otherBytes += other.otherBytes;
        }

        private void judge(String piece) {
            if (!piece.startsWith("$")) {
                otherLines++;
                otherBytes += piece.length();
                return;
            }
            boolean ended = piece.endsWith("\n");
            String line = piece.replaceFirst(ended ? "\r?\n$" : "\r$", "");
            int limit = line.startsWith("$PEVF") ? 80 : 94;
            int printable = 0;
            while (printable < line.length() && line.charAt(printable) >= ' ' && line.charAt(printable) <= '~') {
                printable++;
            }
            if (printable > limit) {
                tooLong++;
            } else if (printable < line.length() || !ended) {
                malformed++;
            } else {
                judgeChecksum(line);
            }
        }

        private void judgeChecksum(String line) {
            Matcher matcher = SOUND.matcher(line);
            // A star too many shows only after the sum is taken over everything before the last one.
            Matcher loose =
                    Pattern.compile("\\$([^,].*|\\*.*)\\*([0-9A-Fa-f]{2})").matcher(line);
            if (!loose.matches()) {
                malformed++;
                return;
            }
            int sum = 0;
            for (char c : loose.group(1).toCharArray()) {
                sum ^= c;
            }
            if (sum != Integer.parseInt(loose.group(2), 16)) {
                checksum++;
            } else if (matcher.matches()) {
                sound++;
            } else {
                malformed++;
            }
        }
    }
}
