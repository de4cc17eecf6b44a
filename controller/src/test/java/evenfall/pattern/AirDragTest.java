package evenfall.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** A stream of 0.5 L/min at 5 m/s, UAN 28: a jet of 1.46 mm. What it should do follows from the drag of a sphere. */
class AirDragTest {
    private static final double STREAM_M3PS = 0.5e-3 / 60;
    private static final double EXIT_MPS = 5;

    private final AirDrag drag = new AirDrag(STREAM_M3PS, EXIT_MPS, 1.28, 1);

    private double carriesS(double flightS, double downMps, double againstMps) {
        double[] carries = {flightS};
        drag.carry(carries, new double[] {downMps}, new double[] {againstMps}, 0);
        return carries[0];
    }

    @Test
    void aStreamThatIsStillWholeFliesAsInAVacuum() {
        assertThat(carriesS(0.01, 5, 6)).isEqualTo(0.01);
    }

    @Test
    void aStreamAimedDownLandsAlmostWhereItWould() {
        double flightS = Flight.timeS(4.9, 0.5);

        assertThat(carriesS(flightS, 4.9, 7) / flightS).isCloseTo(1, within(0.01));
    }

    @Test
    void aStreamThrownLevelFallsShort() {
        double flightS = Flight.timeS(0, 0.5);
        double share = carriesS(flightS, 0, 4) / flightS;

        // Drops of 2.76 mm: lambda = 0.75 · 0.45 · 1.225 · 4 / (1280 · 0.00276) = 0.47 per s over 0.3 s is 6 %, of
        // which two
        // thirds are left by the longer fall; the first 0.02 to 0.1 s are whole.
        assertThat(share).isBetween(0.93, 0.99);
    }

    @Test
    void aWholeStreamAimedDownIsBlownToTheRearAlone() {
        assertThat(drag.takenFromWhole(0, 4.5, 6)).isZero();
    }

    @Test
    void aWholeStreamThrownToTheRearIsSlowedAsACylinderAcrossTheWind() {
        // 4.33 to the rear, 2.5 across it: the air comes across at 6 · 0.5 = 3 m/s, so 2 · 1.1 · 1.225 · 3 / (π · 1280
        // · 1.457e-3)
        // = 1.380 per s; of u that is 1.380 · 6 · 0.866 / 5 = 1.434 per s. Re is 3,729, so it is whole for 0.0243 s.
        double perS = drag.takenFromWhole(5 * Math.sqrt(0.75), 5, 6) / 1.434;

        assertThat(perS).isCloseTo(0.0243, within(0.0002));
    }

    @Test
    void whatIsTakenFromAWholeStreamShortensItsWayAsides() {
        double flightS = Flight.timeS(-1, 0.5);
        double[] free = {flightS};
        double[] slowed = {flightS};
        drag.carry(free, new double[] {-1}, new double[] {4}, 0);
        drag.carry(slowed, new double[] {-1}, new double[] {4}, 0.1);

        // A tenth less speed to the side; and a tenth less of 1 m/s upwards for 0.4 s are 0.04 m, which it falls
        // through at 3 m/s.
        assertThat(slowed[0] / free[0]).isCloseTo(0.9 - 0.04 / 3 / flightS, within(0.015));
    }

    @Test
    void aStreamSpreadsAsFarAsItsDropsStray() {
        assertThat(drag.spreadM(0.01, 5)).isCloseTo(1.457e-3 / 4, within(1e-6));
        assertThat(drag.spreadM(0.1, 5)).isCloseTo(0.02 * 5 * (0.1 - 0.0243), within(1e-4));
    }

    @Test
    void morePathMeansMoreDrag() {
        double before = 1;
        for (double heightM = 0.2; heightM < 1.5; heightM += 0.1) {
            double flightS = Flight.timeS(-1, heightM);
            double share = carriesS(flightS, -1, 4) / flightS;
            assertThat(share).isLessThanOrEqualTo(before).isGreaterThan(0.7);
            before = share;
        }
    }
}
