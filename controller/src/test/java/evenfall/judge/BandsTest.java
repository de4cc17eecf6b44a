package evenfall.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.pattern.BoomPattern;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import evenfall.sense.Quantity;
import evenfall.sense.Unknown;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Which of the two band alerts speaks, when lines change while the rows are uneven. */
class BandsTest {
    private static final Quantity UNKNOWN = Quantity.unknown(Unknown.NOT_FITTED, -1);
    private static final double RATED = 1;

    private Rig rig;
    private Bands bands;
    private BandsWatch gapped;
    private BandsWatch doubled;
    private Latch gappedLatch;
    private Latch doubledLatch;
    private final List<String> story = new ArrayList<>();
    private int look;

    BandsTest() throws Exception {
        fit("three-stream");
    }

    private void fit(String type) throws Exception {
        String text =
                Files.readString(Path.of("docs", "example-rig.yaml")).replace("type: five-stream", "type: " + type);
        rig = RigFile.parse("rig", text, Path.of("docs"));
        bands = new Bands(rig);
        gapped = new BandsWatch(false, bands, rig);
        doubled = new BandsWatch(true, bands, rig);
        gappedLatch = new Latch(1, 5);
        doubledLatch = new Latch(1, 5);
        story.clear();
        look = 0;
    }

    /** Wings are not looked at here, so that all rows count at any height. */
    private void at(double heightM, double speedFactor, int looks) {
        double[] heights = new double[rig.boom().outlets()];
        boolean[] all = new boolean[heights.length];
        Arrays.fill(heights, heightM);
        Arrays.fill(all, true);
        BoomPattern pattern = new BoomPattern(
                rig.boom(), rig.outlet(), rig.target().heightM(), rig.liquid().specificGravity());
        pattern.compute(heights, all, all, speedFactor);
        for (int i = 0; i < looks; i++) {
            Situation now = now(pattern);
            tell("gapped", gappedLatch, gapped.verdict(now));
            tell("doubled", doubledLatch, doubled.verdict(now));
        }
    }

    private Situation now(BoomPattern pattern) {
        look++;
        return new Situation(
                200_000L * look,
                0.2,
                1.1,
                Quantity.known(5.5, 0),
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                UNKNOWN,
                null,
                pattern,
                List.of(),
                List.of(),
                new Situation.Plumbing(UNKNOWN, UNKNOWN, UNKNOWN, 0, UNKNOWN, UNKNOWN));
    }

    private void tell(String kind, Latch latch, Verdict verdict) {
        Latch.Change change = latch.look(200_000L * look, 0.2, 1.1, verdict);
        if (change != Latch.Change.NONE) {
            story.add((change == Latch.Change.RAISED ? "+" : "-") + kind + "@" + look);
        }
    }

    @Test
    void aBoomTooLowHasGapsAndOneTooHighDoublesAndEachIsToldWhenItsHoldIsOver() throws Exception {
        at(0.35, RATED, 20);
        assertThat(story).containsExactly("+gapped@6");
        fit("three-stream");
        at(0.76, RATED, 20);
        assertThat(story).containsExactly("+doubled@6");
    }

    @Test
    void aBoomThatRisesThroughGapsIsToldByWhatComesToStay() {
        at(0.60, RATED, 4);
        at(0.76, RATED, 16);
        assertThat(bands.is(true)).isTrue();
        assertThat(story).containsExactly("+doubled@9");
    }

    @Test
    void causesThatNeverAgreeAreToldASecondLaterByMostOfThem() {
        for (int i = 0; i < 10; i++) {
            at(0.76, RATED, 2);
            at(0.60, RATED, 1);
        }
        assertThat(story).hasSize(1);
        assertThat(story.get(0)).startsWith("+doubled@");
        assertThat(Integer.parseInt(story.get(0).substring("+doubled@".length())))
                .isBetween(7, 12);
    }

    @Test
    void aNameOnceGivenStaysForAMomentsChangeAndGivesWayToALastingOne() {
        at(0.76, RATED, 60);
        at(0.60, RATED, 20);
        assertThat(story).containsExactly("+doubled@6");
        at(0.60, RATED, 40);
        assertThat(story).hasSize(3).contains("+doubled@6");
        assertThat(story.toString()).contains("+gapped").contains("-doubled");
    }

    @Test
    void aPatternTooNarrowHasGapsAlthoughItsWeakEndsMeetHalfWay() throws Exception {
        fit("seven-stream");
        double factor = rig.outlet().speedFactor(80_000, rig.liquid().specificGravity());
        at(0.5, factor, 1);
        assertThat(bands.lines().doubledShare())
                .as("a tenth more than at the rated pressure, where none is")
                .isGreaterThan(0.1);
        at(0.5, factor, 20);
        assertThat(story).containsExactly("+gapped@6");
    }
}
