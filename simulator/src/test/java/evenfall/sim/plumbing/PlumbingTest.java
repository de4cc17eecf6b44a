package evenfall.sim.plumbing;

import static org.assertj.core.api.Assertions.assertThat;
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

    /** Random driving, switching and trouble; the books are closed after every step. */
    @Test
    void whatLeavesTheTankLeavesTheOutletsLeaksOrStaysInTheLines() {
        for (long seed = 1; seed <= 40; seed++) {
            Chance chance = Chance.stream(seed, "script");
            Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.5);
            PlumbingTrouble trouble = plumbing.trouble();
            double heldAtFirst = plumbing.heldM3();
            double speed = 5.5;
            double out = 0;
            for (int step = 0; step < 3000; step++) {
                speed = Math.max(0, Math.min(8, speed + 0.02 * chance.nextGaussian()));
                plumbing.step(0.005, speed);
                if (step % 4 == 3) {
                    double least = 0;
                    for (double volume : plumbing.drain()) {
                        least = Math.min(least, volume);
                        out += volume;
                    }
                    assertThat(least).as("seed %d step %d", seed, step).isZero();
                    for (int i = 0; i < 72; i++) {
                        out += plumbing.leakedM3(i);
                    }
                    double books = out + plumbing.lineLeakM3() + plumbing.heldM3() - heldAtFirst;
                    assertThat(books)
                            .as("seed %d step %d", seed, step)
                            .isCloseTo(plumbing.tankM3(), within(1e-9 * plumbing.tankM3()));
                }
                if (chance.nextInt(100) == 0) {
                    happen(trouble, plumbing, chance);
                }
            }
            assertThat(plumbing.tankM3()).as("seed %d", seed).isGreaterThan(0.002);
        }
    }

    private static void happen(PlumbingTrouble trouble, Plumbing plumbing, Chance chance) {
        int outlet = chance.nextInt(72);
        int section = chance.nextInt(6);
        double much = chance.nextDouble();
        switch (chance.nextInt(14)) {
            case 0 -> trouble.blockOutlet(outlet, much);
            case 1 -> trouble.blockOutlet(outlet, 1);
            case 2 -> trouble.wearOutlet(outlet, much);
            case 3 -> trouble.leakOutlet(outlet, 3 * much);
            case 4 -> trouble.leakOutlet(outlet, 0);
            case 5 -> trouble.loseOutlet(outlet, 3 + 10 * much);
            case 6 -> trouble.plugSectionStrainer(section, much);
            case 7 -> trouble.plugStrainer(much);
            case 8 -> trouble.leakLine(1e-3 * much, 200_000);
            case 9 -> trouble.drawAir(0.5 * much, Chance.stream(outlet, "slugs"));
            case 10 -> trouble.weakenPump(0.9 * much);
            case 11 -> trouble.holdShut(section, much < 0.5);
            case 12 -> trouble.holdOpen(section, much < 0.5);
            default -> plumbing.switchSections(chance.nextInt(64));
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

    private static void run(Plumbing plumbing, double seconds, double speedMps) {
        for (int i = 0; i < Math.round(seconds / 0.005); i++) {
            plumbing.step(0.005, speedMps);
        }
    }

    @Test
    void aSectionThatIsOffDribblesOutAndTheOthersComeBackToTheirFlow() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.0);
        run(plumbing, 1, 5.0);
        double before = plumbing.outletFlowM3ps(30);
        double pressureBefore = plumbing.feedPressurePa();
        plumbing.drain();
        plumbing.switchSections(0b111110);
        assertThat(plumbing.widthOnM()).isCloseTo(60 * 0.508, within(1e-9));
        assertThat(plumbing.isOn(0)).isFalse();
        run(plumbing, 0.4, 5.0);
        assertThat(plumbing.feedPressurePa()).as("the valve is late").isGreaterThan(1.03 * pressureBefore);
        assertThat(plumbing.outletFlowM3ps(0)).as("it dribbles").isBetween(0.01 * before, 0.6 * before);
        run(plumbing, 10, 5.0);
        double dribbled = plumbing.drain()[0];
        assertThat(plumbing.outletFlowM3ps(0)).as("it has drained").isLessThan(1e-12);
        assertThat(dribbled)
                .as("0.3 s of closing, pressure, 2 mL")
                .isBetween(2e-6 + 0.15 * before, 3e-6 + 0.6 * before);
        assertThat(plumbing.outletFlowM3ps(30)).isCloseTo(before, within(0.01 * before));

        run(plumbing, 1, 5.0);
        assertThat(plumbing.drain()[0]).as("nothing more comes").isLessThan(1e-13);
    }

    @Test
    void aSectionThatIsSwitchedOnFillsFirst() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.0);
        run(plumbing, 1, 5.0);
        double whole = plumbing.outletFlowM3ps(0);
        plumbing.switchSections(0b111110);
        run(plumbing, 10, 5.0);
        plumbing.switchSections(0b111111);
        run(plumbing, 0.02, 5.0);
        assertThat(plumbing.outletFlowM3ps(0)).isLessThan(0.1 * whole);
        run(plumbing, 0.6, 5.0);
        assertThat(plumbing.outletFlowM3ps(0)).isGreaterThan(0.8 * whole);
        run(plumbing, 10, 5.0);
        assertThat(plumbing.outletFlowM3ps(0)).isCloseTo(whole, within(1e-4 * whole));
    }

    @Test
    void sectionsWithoutLengthSwitchAtOnce() {
        Plumbing plumbing = plumbing(
                PlumbingSpec.ordinary().withLines(PlumbingSpec.Lines.ordinary().withoutDribble()), 5.0);
        run(plumbing, 1, 5.0);
        plumbing.switchSections(0);
        run(plumbing, 1, 5.0);
        plumbing.drain();
        run(plumbing, 1, 5.0);
        assertThat(plumbing.outletsFlowM3ps()).isLessThan(1e-12);
        assertThat(plumbing.flowM3ps()).isLessThan(1e-9);
        assertThat(plumbing.drain()[30]).isLessThan(1e-13);
    }

    @Test
    void sectionsThatAreOffAtTheStartHaveLongBeenOff() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.0);
        plumbing.switchSections(0b000111);
        double wanted = RATE_M * 5.0 * 36 * 0.508;
        assertThat(plumbing.outletsFlowM3ps()).isCloseTo(wanted, within(1e-9 * wanted));
        run(plumbing, 1, 5.0);
        assertThat(plumbing.drain()[71]).isZero();
        assertThat(plumbing.flowM3ps()).isCloseTo(wanted, within(1e-6 * wanted));
    }

    @Test
    void theControllerIsRightByItsOwnMeterAndSpeed() {
        PlumbingSpec.Lines lines = new PlumbingSpec.Lines(0.010, 0.4, 0.3, 2e-6, 0, 1.1, 0.95);
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary().withLines(lines), 5.0);
        double wanted = RATE_M * 5.0 * BOOM.widthM() * 0.95 / 1.1;
        assertThat(plumbing.flowM3ps()).isCloseTo(wanted, within(1e-9 * wanted));
        run(plumbing, 20, 5.0);
        assertThat(plumbing.flowM3ps()).isCloseTo(wanted, within(1e-6 * wanted));
    }

    @Test
    void wornOutletsAllLetMoreThroughAndDifferMore() {
        PlumbingSpec.Lines worn = new PlumbingSpec.Lines(0.010, 0.4, 0.3, 2e-6, 0.10, 1, 1);
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary().withLines(worn), 5.0);
        Plumbing fresh = plumbing(PlumbingSpec.ordinary(), 5.0);
        double sum = 0;
        double least = 9;
        double most = 0;
        for (int i = 0; i < 72; i++) {
            double k = plumbing.outletFlowM3ps(i) / Math.sqrt(plumbing.outletPressurePa(i));
            double k0 = fresh.outletFlowM3ps(i) / Math.sqrt(fresh.outletPressurePa(i));
            sum += k / k0 - 1;
            least = Math.min(least, k / k0 - 1);
            most = Math.max(most, k / k0 - 1);
        }
        assertThat(sum / 72).isBetween(0.085, 0.115);
        assertThat(least).isBetween(-1e-9, 0.03);
        assertThat(most).isBetween(0.17, 0.20 + 1e-9);
    }

    @Test
    void thePumpDeliversNoMoreThanItCan() {
        PlumbingSpec.Lines small = new PlumbingSpec.Lines(0.002, 0.4, 0.3, 2e-6, 0, 1, 1);
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary().withLines(small), 5.0);
        run(plumbing, 20, 5.0);
        assertThat(plumbing.flowM3ps()).isCloseTo(0.002, within(1e-6));
        assertThat(plumbing.outletsFlowM3ps()).isCloseTo(0.002, within(1e-6));
    }

    @Test
    void aBoomThatIsSwitchedOnAtAStandstillComesToItsLeastPressure() {
        Plumbing plumbing = plumbing(PlumbingSpec.ordinary(), 5.0);
        run(plumbing, 1, 5.0);
        plumbing.switchSections(0);
        run(plumbing, 10, 0);
        assertThat(plumbing.flowM3ps()).isCloseTo(0, within(1e-9));
        assertThat(plumbing.feedPressurePa()).as("the pump's").isCloseTo(600_000, within(100.0));
        plumbing.switchSections(0b111111);
        run(plumbing, 20, 0);
        assertThat(plumbing.feedPressurePa()).isCloseTo(40_000, within(800.0));
    }
}
