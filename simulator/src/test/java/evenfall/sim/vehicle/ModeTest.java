package evenfall.sim.vehicle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The model under test: q̈ = −ω²(q − g) − 2ζω(q̇ − ġ) with a foot g that moves evenly over each step. */
class ModeTest {

    @ParameterizedTest
    @CsvSource({"0.4, 0.5", "1.2, 0.08", "1.5, 0.02", "1.74, 0.2", "2.2, 0.25"})
    void aFreeVibrationHasItsFrequencyAndDamping(double naturalHz, double zeta) {
        Mode mode = new Mode(naturalHz, zeta);
        mode.placeAt(0, 1, 0);
        double dt = 0.001;
        List<Double> crossings = new ArrayList<>();
        List<Double> peaks = new ArrayList<>();
        double before = mode.value();
        double peak = 0;
        for (int i = 1; i * dt < 12 / naturalHz && crossings.size() < 9; i++) {
            mode.step(dt, 0);
            double now = mode.value();
            if (before < 0 != now < 0) {
                crossings.add((i - now / (now - before)) * dt);
                peaks.add(peak);
                peak = 0;
            }
            peak = Math.max(peak, Math.abs(now));
            before = now;
        }
        // Zeros are half a damped period apart; peaks fall by exp(−πζ/√(1 − ζ²)) from one half to the next.
        int n = crossings.size() - 1;
        double dampedHz = 0.5 * n / (crossings.get(n) - crossings.get(0));
        assertThat(n).isGreaterThan(3);
        assertThat(dampedHz).isCloseTo(naturalHz * Math.sqrt(1 - zeta * zeta), within(1e-5 * naturalHz));
        double decrement = Math.log(peaks.get(1) / peaks.get(n)) / (n - 1);
        double found = decrement / Math.sqrt(Math.PI * Math.PI + decrement * decrement);
        assertThat(found).isCloseTo(zeta, within(1e-3 * zeta));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.05, 0.5, 0.999999, 1, 1.000001, 2.5})
    void oneStepIsWhatAnIntegratorOfHighOrderFinds(double zeta) {
        double naturalHz = 0.7;
        double omega = 2 * Math.PI * naturalHz;
        double footFrom = 0.3;
        double footTo = -0.9;
        double length = 0.8;
        double footSpeed = (footTo - footFrom) / length;
        OrdinaryDifferentialEquation equation = new OrdinaryDifferentialEquation() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public double[] computeDerivatives(double t, double[] y) {
                double foot = footFrom + footSpeed * t;
                return new double[] {y[1], -omega * omega * (y[0] - foot) - 2 * zeta * omega * (y[1] - footSpeed)};
            }
        };
        double[] end = new DormandPrince853Integrator(1e-6, 0.1, 1e-13, 1e-13)
                .integrate(equation, new ODEState(0, new double[] {footFrom + 0.4, -1.1}), length)
                .getPrimaryState();

        Mode mode = new Mode(naturalHz, zeta);
        mode.placeAt(footFrom, 0.4, -1.1);
        mode.step(length, footTo);
        // The last two near critical damping lose digits to 1 − ζ²; 10⁻⁸ of a metre is still nothing.
        assertThat(mode.value()).isCloseTo(end[0], within(1e-8));
        assertThat(mode.speed()).isCloseTo(end[1], within(1e-8));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 1, 2.5})
    void manyShortStepsMakeOneLongOne(double zeta) {
        Mode once = new Mode(1.3, zeta);
        Mode often = new Mode(1.3, zeta);
        once.placeAt(0, 1, 2);
        often.placeAt(0, 1, 2);
        once.step(0.5, 0.7);
        for (int i = 1; i <= 50; i++) {
            often.step(0.01, 0.7 * i / 50);
        }
        assertThat(often.value()).isCloseTo(once.value(), within(1e-12));
        assertThat(often.speed()).isCloseTo(once.speed(), within(1e-11));
    }

    @Test
    void energyNeverGrowsWithoutForceWhateverTheStep() {
        SplittableRandom random = new SplittableRandom(8);
        for (int trial = 0; trial < 200; trial++) {
            double naturalHz = 0.1 + 5 * random.nextDouble();
            double zeta = trial % 10 == 0 ? 0 : 2 * random.nextDouble() * random.nextDouble();
            Mode mode = new Mode(naturalHz, zeta);
            mode.placeAt(3, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
            double energy = mode.energy();
            for (int i = 0; i < 300; i++) {
                mode.step(0.001 + random.nextDouble() * 0.6, 3);
                assertThat(mode.energy())
                        .as("seed 8 trial %d: %f Hz, damping %f", trial, naturalHz, zeta)
                        .isLessThanOrEqualTo(energy * (1 + 1e-13));
                energy = mode.energy();
            }
        }
    }

    @Test
    void aModeAtRestOnARestingTargetStaysThere() {
        Mode mode = new Mode(0.4, 0.5);
        mode.place(2.5);
        for (int i = 0; i < 1000; i++) {
            mode.step(0.01, 2.5);
        }
        assertThat(mode.value()).isEqualTo(2.5);
        assertThat(mode.speed()).isZero();
    }

    @Test
    void aRigidModeIsWhereItsTargetIs() {
        Mode mode = new Mode(Double.POSITIVE_INFINITY, 0);
        mode.place(1);
        mode.step(0.01, 1.5);
        assertThat(mode.value()).isEqualTo(1.5);
        assertThat(mode.speed()).isCloseTo(50, within(1e-12));
        assertThat(mode.offset()).isZero();
    }

    @Test
    void aModePlacedOnAMovingTargetGoesWithIt() {
        Mode mode = new Mode(0.8, 0.1);
        mode.placeMoving(2, 3);
        for (int i = 1; i <= 500; i++) {
            mode.step(0.01, 2 + 0.03 * i);
            assertThat(mode.offset()).isCloseTo(0, within(1e-11));
            assertThat(mode.target()).isEqualTo(2 + 0.03 * i);
        }
        assertThat(mode.speed()).isCloseTo(3, within(1e-9));
    }

    @Test
    void aBlowChangesTheSpeedAndNotThePlace() {
        Mode mode = new Mode(0.8, 0);
        mode.place(1);
        mode.push(0.5);
        assertThat(mode.value()).isEqualTo(1);
        assertThat(mode.speed()).isEqualTo(0.5);
        // A quarter of a period later it is furthest away, by v/ω.
        mode.step(0.25 / 0.8, 1);
        assertThat(mode.offset()).isCloseTo(0.5 / (2 * Math.PI * 0.8), within(1e-12));
        Mode rigid = new Mode(Double.POSITIVE_INFINITY, 0);
        rigid.place(1);
        rigid.push(0.5);
        assertThat(rigid.speed()).isZero();
    }

    @Test
    void impossibleModesAndStepsAreRefused() {
        assertThatThrownBy(() -> new Mode(0, 0.1)).hasMessage("natural frequency must be above 0 Hz, not 0.0");
        assertThatThrownBy(() -> new Mode(1, -0.1)).hasMessage("damping ratio must be 0 or above, not -0.1");
        Mode mode = new Mode(1, 0.1);
        assertThatThrownBy(() -> mode.step(0, 1)).hasMessage("step must be above 0 s, not 0.0");
    }
}
