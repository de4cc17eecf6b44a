package evenfall.bench.choose;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against trying every choice of pieces there is. */
class IntervalCoverTest {
    private static final long SEED = 20261125;

    @Test
    void findsTheFewestPiecesAndOfThoseTheChoiceWithTheMostRoom() {
        Random random = new Random(SEED);
        int covered = 0;
        for (int n = 0; n < 400; n++) {
            List<Span> pieces = pieces(random);
            double low = 0.8 + 3 * random.nextDouble();
            Span whole = new Span(low, low * (1 + 5 * random.nextDouble()));
            int[] found = IntervalCover.fewest(pieces, whole);
            int[] best = byTryingAll(pieces, whole);
            String about = "seed " + SEED + ", case " + n;
            assertThat(found == null).as(about).isEqualTo(best == null);
            if (found != null && best != null) {
                covered++;
                assertThat(found).as(about).hasSameSizeAs(best);
                assertThat(room(pieces, whole, found)).as(about).isEqualTo(room(pieces, whole, best));
            }
        }
        assertThat(covered).isBetween(50, 350);
    }

    @Test
    void oneFlowTakesOnePiece() {
        List<Span> pieces = List.of(new Span(1, 2), new Span(1.5, 3));
        assertThat(IntervalCover.fewest(pieces, new Span(1.6, 1.6))).hasSize(1);
    }

    @Test
    void endsThatMeetExactlyLeaveNoGap() {
        List<Span> pieces = List.of(new Span(1, 2), new Span(2, 4));
        assertThat(IntervalCover.fewest(pieces, new Span(1, 4))).containsExactly(0, 1);
    }

    private static List<Span> pieces(Random random) {
        List<Span> pieces = new ArrayList<>();
        double low = 0.5;
        double width = 1.15 + random.nextDouble();
        for (int i = 0; i < 9; i++) {
            pieces.add(new Span(low, low * width));
            low *= 1.05 + 0.4 * random.nextDouble();
        }
        return pieces;
    }

    private static int[] byTryingAll(List<Span> pieces, Span whole) {
        int[] best = null;
        for (int mask = 1; mask < 1 << pieces.size(); mask++) {
            int[] chosen = new int[Integer.bitCount(mask)];
            for (int i = 0, k = 0; i < pieces.size(); i++) {
                if ((mask >> i & 1) == 1) {
                    chosen[k++] = i;
                }
            }
            double room = room(pieces, whole, chosen);
            if (room >= 1
                    && (best == null
                            || chosen.length < best.length
                            || chosen.length == best.length && room > room(pieces, whole, best))) {
                best = chosen;
            }
        }
        return best;
    }

    /** The smallest overlap; below 1 where there is a gap. */
    private static double room(List<Span> pieces, Span whole, int[] chosen) {
        double room = Math.min(
                whole.low() / pieces.get(chosen[0]).low(),
                pieces.get(chosen[chosen.length - 1]).high() / whole.high());
        for (int k = 1; k < chosen.length; k++) {
            room = Math.min(
                    room,
                    pieces.get(chosen[k - 1]).high() / pieces.get(chosen[k]).low());
        }
        return room;
    }
}
