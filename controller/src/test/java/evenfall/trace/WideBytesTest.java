package evenfall.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class WideBytesTest {
    @Test
    void theFirstSuchByteIsFoundWhereverItLies() {
        long seed = 5;
        Random random = new Random(seed);
        byte[] kinds = {'\n', '\n' + 1, '\n' - 1, (byte) 0x8A, 0, 'a', 'b', 'c', 'd', 'e', 'f', 'g'};
        byte[] bytes = new byte[40];
        for (int round = 0; round < 20_000; round++) {
            // Few kinds, some of them a bit beside the one that is wanted.
            for (int i = 0; i < bytes.length; i++) {
                bytes[i] = kinds[random.nextInt(kinds.length)];
            }
            int from = random.nextInt(40);
            int to = from + random.nextInt(41 - from);
            int first = from;
            while (first < to && bytes[first] != '\n') {
                first++;
            }
            assertThat(WideBytes.find((byte) '\n', bytes, from, to))
                    .as("seed %d, round %d", seed, round)
                    .isEqualTo(first);
        }
    }

    @Test
    void oneByteThatIsNotPrintableIsNoticedAtEveryPlaceAndWithEveryValue() {
        for (int value = -128; value < 128; value++) {
            for (int at = 0; at < 19; at++) {
                for (int beside : new int[] {' ', '~', 'A'}) {
                    byte[] bytes = new byte[21];
                    Arrays.fill(bytes, (byte) beside);
                    bytes[at] = (byte) value;
                    assertThat(WideBytes.allPrintable(bytes, 0, 19))
                            .as("%d at %d beside %d", value, at, beside)
                            .isEqualTo(value >= ' ' && value <= '~');
                }
            }
        }
    }
}
