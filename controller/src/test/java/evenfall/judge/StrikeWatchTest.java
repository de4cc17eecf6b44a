package evenfall.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The clearance of the documented example rig is 0.15 m. */
class StrikeWatchTest {
    private final StrikeWatch watch;

    StrikeWatchTest() throws Exception {
        Rig rig = RigFile.read(Path.of("docs", "example-rig.yaml"));
        assertThat(rig.limits().clearanceM()).isEqualTo(0.15);
        watch = new StrikeWatch("left", rig);
    }

    /** Standard deviations from 0.15 m to what is expected: below one it is over, from two on well. */
    @ParameterizedTest
    @CsvSource({
        "0.10, 0.05, true,  OVER",
        "0.19, 0.05, true,  OVER",
        "0.21, 0.05, true,  BETWEEN",
        "0.26, 0.05, true,  WELL",
        "0.24, 0.10, true,  OVER",
        "0.14, 0.00, true,  OVER",
        "0.16, 0.00, true,  WELL",
        "0.10, 0.05, false, LEANING",
        "0.26, 0.05, false, WELL"
    })
    void theChanceOfBeingUnderTheClearanceIsJudged(double aheadM, double sdM, boolean sure, Verdict verdict) {
        assertThat(watch.verdict(new Tip(true, sure, 0.4, aheadM, sdM, 0.5))).isEqualTo(verdict);
    }

    @Test
    void whatIsNotKnownIsNotJudgedAndWhatIsFarIsWell() {
        assertThat(watch.verdict(Tip.UNKNOWN)).isEqualTo(Verdict.UNKNOWN);
        assertThat(watch.verdict(Tip.FAR)).isEqualTo(Verdict.WELL);
    }

    @Test
    void itSaysWhereTheTipIsAndWillBe() {
        Watch.Finding found = watch.finding(new Tip(true, true, 0.42, -0.03, 0.05, 0.46));

        assertThat(found.why()).isEqualTo("The left tip is at 0.42 m and will be at about 0.00 m in 0.5 s.");
        assertThat(found.act()).isEqualTo("Raise the left wing now, and slow down.");
        assertThat(found.value()).isEqualTo(0.46);
        assertThat(found.unit()).isEqualTo("s");
    }
}
