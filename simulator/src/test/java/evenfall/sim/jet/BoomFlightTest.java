package evenfall.sim.jet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.liquid.Liquids;
import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.sim.chance.Chance;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * The table and the boom against direct integration. Working range: pressure within the outlet's window, heights of −0.1 to 2.0 m,
 * travel up to 8 m/s.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class BoomFlightTest {
    private static final long SEED = 31;
    private static final int CASES = 120;
    private static final JetLiquid UAN = JetLiquid.of(Liquids.UAN_28);

    private final OutletType[] types = new OutletType[OutletCatalogue.ids().size()];
    private final FlightTable[] tables = new FlightTable[types.length];

    /** What differs most, and the root of the mean square, mm. */
    private record Errors(double rightMm, double rightRmsMm, double backMm, double sigmaMm) {}

    /** How far roll (rad) and the outlet's own velocity (m/s) may go to either side. */
    private record Motion(double roll, double up, double right, double forward) {}

    @BeforeAll
    void build() {
        for (int i = 0; i < types.length; i++) {
            types[i] = OutletCatalogue.builtIn(OutletCatalogue.ids().get(i)).fitted(0.508);
            tables[i] = new FlightTable(types[i], UAN, Air.AT_20C);
        }
    }

    private static double toEitherSide(Chance chance, double limit) {
        return limit * (2 * chance.nextDouble() - 1);
    }

    private Errors compare(int which, double highestM, Motion motion) {
        return compare(types[which], tables[which], highestM, motion, 0, 0);
    }

    private static Errors compare(
            OutletType type, FlightTable table, double highestM, Motion motion, double windBack, double windRight) {
        Chance chance = Chance.stream(SEED, "flights");
        int n = type.streams().size();
        BoomFlight boom = new BoomFlight(table, 1);
        OutletStates state = new OutletStates(1);
        Landings landings = new Landings(1, n);
        StreamFlight[] flights = new StreamFlight[n];
        for (int k = 0; k < n; k++) {
            flights[k] = new StreamFlight(type, k, UAN, Air.AT_20C);
        }
        double slow = type.speedFactor(type.lowPa(), table.specificGravity());
        double fast = type.speedFactor(type.highPa(), table.specificGravity());
        double right = 0;
        double squares = 0;
        double back = 0;
        double sigma = 0;
        for (int c = 0; c < CASES; c++) {
            double heightM = -0.1 + (highestM + 0.1) * chance.nextDouble();
            double factor = slow + (fast - slow) * chance.nextDouble();
            double travelMps = 8 * chance.nextDouble();
            double roll = toEitherSide(chance, motion.roll);
            double up = toEitherSide(chance, motion.up);
            double aside = toEitherSide(chance, motion.right);
            double ahead = toEitherSide(chance, motion.forward);
            state.rightM()[0] = 3;
            state.heightM()[0] = heightM;
            state.speedFactor()[0] = factor;
            state.quantity()[0] = 1;
            state.rollRad()[0] = roll;
            state.upMps()[0] = up;
            state.toRightMps()[0] = aside;
            state.forwardMps()[0] = ahead;
            boom.land(state, travelMps, landings);
            for (int k = 0; k < n; k++) {
                double holeM = type.streams().get(k).offsetM();
                double holeHeightM = heightM + holeM * Math.sin(roll);
                double wantRightM = 3 + holeM * Math.cos(roll);
                double wantBackM = 0;
                if (holeHeightM > 0) {
                    Touchdown down = flights[k].land(
                            holeHeightM,
                            flights[k].leaving(factor, roll, aside, ahead, up),
                            travelMps + windBack,
                            windRight);
                    wantRightM += down.rightM();
                    wantBackM = down.backM() - travelMps * down.flightS();
                    sigma = Math.max(sigma, Math.abs(landings.sigmaM()[k][0] - down.sigmaM()));
                }
                double off = Math.abs(landings.rightM()[k][0] - wantRightM);
                right = Math.max(right, off);
                squares += off * off;
                back = Math.max(back, Math.abs(landings.backM()[k][0] - wantBackM));
            }
        }
        return new Errors(1e3 * right, 1e3 * Math.sqrt(squares / (CASES * n)), 1e3 * back, 1e3 * sigma);
    }

    @Test
    void theTableIsRightToHalfAMillimetreOverTheWorkingRange() {
        for (int i = 0; i < types.length; i++) {
            Errors errors = compare(i, FlightTable.HIGHEST_M, new Motion(0, 0, 0, 0));
            String about = "seed " + SEED + ", " + types[i].id() + " " + errors;
            assertThat(errors.rightMm).as(about).isLessThan(0.5);
            assertThat(errors.backMm).as(about).isLessThan(0.5);
            assertThat(errors.sigmaMm).as(about).isLessThan(1);
        }
    }

    @Test
    void itIsAsRightInAWindAndWithWater() {
        OutletType type = types[1];
        FlightTable wind = new FlightTable(type, UAN, Air.AT_20C, 2, -1.5);
        Errors errors = compare(type, wind, FlightTable.HIGHEST_M, new Motion(0, 0, 0, 0), 2, -1.5);
        assertThat(errors.rightMm).as("seed %d %s", SEED, errors).isLessThan(0.5);
        assertThat(errors.backMm).as("seed %d %s", SEED, errors).isLessThan(0.75);
    }

    /** What is usual in the field: up to 3° of roll, 0.3 m/s up, down, ahead and back, 0.1 m/s sideways, below 1 m. */
    @Test
    void usualMotionOfABoomIsWorkedInToSomeMillimetres() {
        Motion usual = new Motion(Math.toRadians(3), 0.3, 0.1, 0.3);
        for (int i = 0; i < types.length; i++) {
            Errors errors = compare(i, 1, usual);
            String about = "seed " + SEED + ", " + types[i].id() + " " + errors;
            assertThat(errors.rightRmsMm).as(about).isLessThan(1);
            assertThat(errors.rightMm).as(about).isLessThan(6);
            assertThat(errors.backMm).as(about).isLessThan(15);
        }
    }

    /** A rough terrace: 6° of roll, 0.5 m/s up and down, ahead and back, 0.3 m/s sideways, up to 2 m. */
    @Test
    void violentMotionIsWorkedInToCentimetres() {
        Motion violent = new Motion(Math.toRadians(6), 0.5, 0.3, 0.5);
        for (int i = 0; i < types.length; i++) {
            Errors errors = compare(i, 2, violent);
            String about = "seed " + SEED + ", " + types[i].id() + " " + errors;
            assertThat(errors.rightRmsMm).as(about).isLessThan(3);
            assertThat(errors.rightMm).as(about).isLessThan(25);
            assertThat(errors.backMm).as(about).isLessThan(50);
        }
    }

    @Test
    void mirroredStreamsFallAtMirroredPlaces() {
        BoomFlight boom = new BoomFlight(tables[1], 1);
        OutletStates state = new OutletStates(1);
        state.quantity()[0] = 6;
        state.heightM()[0] = 0.6;
        state.speedFactor()[0] = 0.9;
        Landings landings = new Landings(1, 5);
        boom.land(state, 5.5, landings);
        assertThat(landings.rightM()[0][0]).isEqualTo(-landings.rightM()[4][0]);
        assertThat(landings.rightM()[2][0]).isCloseTo(0, within(1e-12));
        double sum = 0;
        for (double[] quantity : landings.quantity()) {
            sum += quantity[0];
        }
        assertThat(sum).isCloseTo(6, within(1e-12));
    }

    @Test
    void theAnswerDoesNotDependOnEarlierCallsOrOnNeighbours() {
        Chance chance = Chance.stream(SEED, "history");
        int outlets = 12;
        BoomFlight used = new BoomFlight(tables[3], outlets);
        OutletStates states = new OutletStates(outlets);
        Landings landings = new Landings(outlets, 7);
        for (int moment = 0; moment < 200; moment++) {
            double travelMps = 7 * chance.nextDouble();
            for (int i = 0; i < outlets; i++) {
                states.rightM()[i] = i;
                states.heightM()[i] = 1.5 * chance.nextDouble() - 0.1;
                states.speedFactor()[i] = 1.3 * chance.nextDouble();
                states.quantity()[i] = chance.nextDouble() - 0.2;
                states.rollRad()[i] = toEitherSide(chance, 0.7);
                states.upMps()[i] = toEitherSide(chance, 0.5);
            }
            used.land(states, travelMps, landings);
            if (moment % 50 == 49) {
                Landings fresh = new Landings(outlets, 7);
                new BoomFlight(tables[3], outlets).land(states, travelMps, fresh);
                assertThat(landings.rightM()).isDeepEqualTo(fresh.rightM());
                assertThat(landings.backM()).isDeepEqualTo(fresh.backM());
                assertThat(landings.sigmaM()).isDeepEqualTo(fresh.sigmaM());
                assertThat(landings.quantity()).isDeepEqualTo(fresh.quantity());
            }
        }
    }

    /** Speeds that creep, hover between two steps of the grid, leap, and come back. */
    @Test
    void severalMomentsAtOnceAreTheSameAsOneAfterTheOther() {
        Chance chance = Chance.stream(SEED, "moments");
        int outlets = 12;
        double[] travelMps = {5, 5.01, 5.06, 5.07, 5.06, 7.5, 0, 5.19, 5.19, 5};
        int moments = travelMps.length;
        OutletStates all = new OutletStates(outlets, moments);
        for (int i = 0; i < outlets * moments; i++) {
            all.rightM()[i] = i % outlets;
            all.heightM()[i] = 1.5 * chance.nextDouble() - 0.1;
            all.speedFactor()[i] = 1.3 * chance.nextDouble();
            all.quantity()[i] = chance.nextDouble() - 0.2;
            all.rollRad()[i] = toEitherSide(chance, 0.7);
            all.upMps()[i] = toEitherSide(chance, 0.5);
            all.toRightMps()[i] = toEitherSide(chance, 0.3);
            all.forwardMps()[i] = toEitherSide(chance, 0.5);
        }
        Landings together = new Landings(outlets, 7, moments);
        new BoomFlight(tables[3], outlets, moments).land(all, travelMps, moments, together);
        BoomFlight boom = new BoomFlight(tables[3], outlets);
        OutletStates one = new OutletStates(outlets);
        Landings alone = new Landings(outlets, 7);
        for (int m = 0; m < moments; m++) {
            int from = m * outlets;
            System.arraycopy(all.rightM(), from, one.rightM(), 0, outlets);
            System.arraycopy(all.heightM(), from, one.heightM(), 0, outlets);
            System.arraycopy(all.speedFactor(), from, one.speedFactor(), 0, outlets);
            System.arraycopy(all.quantity(), from, one.quantity(), 0, outlets);
            System.arraycopy(all.rollRad(), from, one.rollRad(), 0, outlets);
            System.arraycopy(all.upMps(), from, one.upMps(), 0, outlets);
            System.arraycopy(all.toRightMps(), from, one.toRightMps(), 0, outlets);
            System.arraycopy(all.forwardMps(), from, one.forwardMps(), 0, outlets);
            boom.land(one, travelMps[m], alone);
            for (int k = 0; k < 7; k++) {
                for (int i = 0; i < outlets; i++) {
                    String about = "seed " + SEED + ", moment " + m + ", stream " + k + ", outlet " + i;
                    assertThat(together.rightM()[k][from + i]).as(about).isEqualTo(alone.rightM()[k][i]);
                    assertThat(together.backM()[k][from + i]).as(about).isEqualTo(alone.backM()[k][i]);
                    assertThat(together.sigmaM()[k][from + i]).as(about).isEqualTo(alone.sigmaM()[k][i]);
                    assertThat(together.quantity()[k][from + i]).as(about).isEqualTo(alone.quantity()[k][i]);
                }
            }
        }
    }

    @Test
    void aShutOutletGivesNothingAndABuriedOneFeedsItsOwnPlace() {
        BoomFlight boom = new BoomFlight(tables[3], 2);
        OutletStates states = new OutletStates(2);
        Landings landings = new Landings(2, 7);
        states.rightM()[1] = 0.5;
        states.heightM()[1] = -0.05;
        states.speedFactor()[1] = 0.9;
        states.quantity()[1] = 1;
        boom.land(states, 5, landings);
        for (int k = 0; k < 7; k++) {
            assertThat(landings.quantity()[k][0]).isZero();
            assertThat(landings.rightM()[k][1]).isEqualTo(0.5);
            assertThat(landings.backM()[k][1]).isZero();
        }
    }

    @Test
    void aTableIsSmall() {
        for (FlightTable table : tables) {
            assertThat(table.bytes()).isLessThan(4_000_000);
        }
    }
}
