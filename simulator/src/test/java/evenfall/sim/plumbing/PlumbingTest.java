package evenfall.sim.plumbing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.outlet.OutletCatalogue;
import evenfall.outlet.OutletType;
import evenfall.rig.BoomLayout;
import evenfall.sim.chance.Chance;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A 36 m boom of 72 outlets, UAN of SG 1.28, 150 L/ha. Invented. */
class PlumbingTest {
    private static final double RATE_M = 150e-7;
    private static final double SG = 1.28;
    private static final OutletType TYPE =
            OutletCatalogue.builtIn("five-stream").fitted(0.508);

    private static final BoomLayout BOOM = boom();

    private static BoomLayout boom() {
        List<BoomLayout.Section> sections = new ArrayList<>();
        for (int s = 0; s < 6; s++) {
            sections.add(new BoomLayout.Section(Integer.toString(s + 1), 12 * s, 12));
        }
        return new BoomLayout(72, 0.508, 0.1905, 0.5, 6, sections);
    }

    private static Plumbing plumbing(PlumbingSpec spec, double speedMps) {
        return new Plumbing(spec, BOOM, TYPE, SG, RATE_M, speedMps, Chance.stream(1, "outlets"));
    }

    @Test
    void standsSettledAtTheTargetWhereItStarts() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.5);
        double wanted = RATE_M * 5.5 * BOOM.widthM();
        assertThat(plumbing.flowM3ps()).isCloseTo(wanted, within(1e-9 * wanted));
        for (int i = 0; i < 2000; i++) {
            plumbing.step(0.005, 5.5);
        }
        assertThat(plumbing.flowM3ps()).isCloseTo(wanted, within(1e-6 * wanted));
    }

    @Test
    void whatTheMeterSeesIsWhatTheOutletsLetThrough() {
        long seed = 99;
        Chance chance = Chance.stream(seed, "speeds");
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.5);
        double speed = 5.5;
        for (int step = 0; step < 4000; step++) {
            speed = Math.max(0, Math.min(8, speed + 0.02 * chance.nextGaussian()));
            plumbing.step(0.005, speed);
            double metered = plumbing.flowM3ps() * 0.005;
            double drained = 0;
            double flows = 0;
            double[] volumes = plumbing.drain();
            for (int i = 0; i < 72; i++) {
                drained += volumes[i];
                flows += plumbing.outletFlowM3ps(i);
            }
            assertThat(flows).as("seed %d step %d", seed, step).isCloseTo(plumbing.flowM3ps(), within(1e-15));
            assertThat(drained).as("seed %d step %d", seed, step).isCloseTo(metered, within(1e-15));
            if (step % 400 == 399) {
                plumbing.switchSections(chance.nextInt(63) + 1);
            }
        }
    }

    @Test
    void everyOutletFollowsTheOrificeLawAtItsOwnPressure() {
        PlumbingSpec even = new PlumbingSpec(600_000, 40_000, 2, 6, 0.25, 0.2, 0.1, 0, 0.05);
        Plumbing plumbing = plumbing(even, 5.0);
        for (int i = 0; i < 72; i++) {
            assertThat(plumbing.outletFlowM3ps(i))
                    .isCloseTo(TYPE.orifice().flowM3ps(plumbing.outletPressurePa(i), SG), within(1e-12));
            assertThat(plumbing.outletPressurePa(i))
                    .as("the boom is alike on both sides")
                    .isCloseTo(plumbing.outletPressurePa(71 - i), within(1e-6));
        }
        double lost = 1 - plumbing.outletPressurePa(0) / plumbing.feedPressurePa();
        assertThat(lost).isBetween(0.044, 0.05);
    }

    @Test
    void slowingDownOverAppliesAndSpeedingUpUnderApplies() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.5);
        double speed = 5.5;
        for (int i = 0; i < 600; i++) {
            speed -= 0.5 * 0.005;
            plumbing.step(0.005, speed);
        }
        double slowing = plumbing.flowM3ps() / (RATE_M * speed * BOOM.widthM()) - 1;
        for (int i = 0; i < 1200; i++) {
            plumbing.step(0.005, speed);
        }
        double settled = plumbing.flowM3ps() / (RATE_M * speed * BOOM.widthM()) - 1;
        for (int i = 0; i < 600; i++) {
            speed += 0.5 * 0.005;
            plumbing.step(0.005, speed);
        }
        double hurrying = plumbing.flowM3ps() / (RATE_M * speed * BOOM.widthM()) - 1;
        assertThat(slowing).isBetween(0.05, 0.2);
        assertThat(Math.abs(settled)).isLessThan(0.005);
        assertThat(hurrying).isBetween(-0.2, -0.04);
    }

    @Test
    void aSectionThatIsOffLetsNothingThroughAndTheOthersComeBackToTheirFlow() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.0);
        double before = plumbing.outletFlowM3ps(30);
        plumbing.switchSections(0b111110);
        double pressureAtOnce = plumbing.feedPressurePa();
        for (int i = 0; i < 30; i++) {
            plumbing.step(0.005, 5.0);
        }
        assertThat(plumbing.feedPressurePa()).as("the valve is late").isGreaterThan(pressureAtOnce);
        for (int i = 0; i < 2000; i++) {
            plumbing.step(0.005, 5.0);
        }
        plumbing.drain();
        assertThat(plumbing.widthOnM()).isCloseTo(60 * 0.508, within(1e-9));
        assertThat(plumbing.outletFlowM3ps(0)).isZero();
        assertThat(plumbing.isOn(0)).isFalse();
        assertThat(plumbing.outletFlowM3ps(30)).isCloseTo(before, within(0.01 * before));

        plumbing.switchSections(0);
        assertThat(plumbing.flowM3ps()).isZero();
        plumbing.step(0.005, 5.0);
        assertThat(plumbing.drain()[30]).isZero();
    }

    @Test
    void refusesToSwitchWhileLiquidIsUnaccountedFor() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.0);
        plumbing.step(0.005, 5.0);
        assertThatThrownBy(() -> plumbing.switchSections(1)).isInstanceOf(IllegalStateException.class);
    }
}
