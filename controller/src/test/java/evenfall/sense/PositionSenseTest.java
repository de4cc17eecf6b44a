package evenfall.sense;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sense.PositionSense.Grade;
import org.junit.jupiter.api.Test;

class PositionSenseTest {
    private static final long SILENCE_US = 2_000_000;
    private final PositionSense sense = new PositionSense();

    @Test
    void aFixHoldsUntilItIsTooOld() {
        assertThat(sense.unknown(0, SILENCE_US)).isEqualTo(Unknown.NOT_YET);
        sense.onFix(1_000_000, 52, 1, 90, 5, 'D');

        PositionSense.Fix fix = sense.fix(2_500_000, SILENCE_US);
        assertThat(fix).isNotNull();
        assertThat(fix.courseRad()).isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(fix.grade()).isEqualTo(Grade.DIFFERENTIAL);
        assertThat(sense.unknown(2_500_000, SILENCE_US)).isNull();
        assertThat(sense.fix(3_000_001, SILENCE_US)).isNull();
        assertThat(sense.unknown(3_000_001, SILENCE_US)).isEqualTo(Unknown.SILENT);
    }

    @Test
    void aLostFixIsGoneAtOnceWithItsCourse() {
        sense.onFix(0, 52, 1, 90, 5, 'A');
        sense.onNoFix(100_000);
        assertThat(sense.unknown(200_000, SILENCE_US)).isEqualTo(Unknown.NO_FIX);
        sense.onFix(300_000, 52, 1, Double.NaN, 0.1, 'A');
        assertThat(sense.fix(300_000, SILENCE_US))
                .as("which way it looks is not known")
                .isNull();
    }

    @Test
    void aCourseHoldsAtAStandstill() {
        sense.onFix(0, 52, 1, 90, 5, 'A');
        sense.onFix(100_000, 52, 1, Double.NaN, 0, 'A');
        assertThat(sense.fix(100_000, SILENCE_US).courseRad()).isCloseTo(Math.PI / 2, within(1e-12));
    }

    /** Letters and numbers of NMEA 0183: RMC's mode from 2.3 on, GGA's quality before. */
    @Test
    void theGradeComesFromTheModeAndWithoutOneFromTheQuality() {
        String modes = "ADFRPE";
        Grade[] grades = {Grade.PLAIN, Grade.DIFFERENTIAL, Grade.DIFFERENTIAL, Grade.RTK, Grade.RTK, Grade.PLAIN};
        sense.onQuality(4);
        for (int i = 0; i < grades.length; i++) {
            sense.onFix(0, 52, 1, 90, 5, modes.charAt(i));
            assertThat(sense.fix(0, SILENCE_US).grade())
                    .as("mode %s", modes.charAt(i))
                    .isEqualTo(grades[i]);
        }
        int[] qualities = {0, 1, 2, 4, 5, 6};
        Grade[] byQuality = {Grade.PLAIN, Grade.PLAIN, Grade.DIFFERENTIAL, Grade.RTK, Grade.DIFFERENTIAL, Grade.PLAIN};
        for (int i = 0; i < qualities.length; i++) {
            sense.onQuality(qualities[i]);
            sense.onFix(0, 52, 1, 90, 5, (char) 0);
            assertThat(sense.fix(0, SILENCE_US).grade())
                    .as("quality %d", qualities[i])
                    .isEqualTo(byQuality[i]);
        }
    }
}
