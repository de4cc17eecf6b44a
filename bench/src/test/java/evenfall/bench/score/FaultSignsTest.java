package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.fault.Fault;
import evenfall.sim.fault.Faults;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Sizes and times by hand: 72 outlets in six sections on 36 m, at 200 kPa and 162 L/min, a meter of 150 pulses a litre. A flow and a
 * pressure that are known to 1 % each tell a change of Q/√p of three times √(1² + ½²) %, 3.35 %.
 */
class FaultSignsTest {
    private static Scenario with(String fault) throws Exception {
        String text;
        try (var in = Scenarios.class.getResourceAsStream("level-field.yaml")) {
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        return Scenarios.written(
                "made",
                text.replace("  air_C: 12\n", "  air_C: 12\n  faults:\n    - {" + fault + "}\n")
                        .replace("spacing_m: 0.508 ", "spacing_m: 0.5 ")
                        .replace("row_m: 0.1905 ", "row_m: 0.15 "));
    }

    private static FaultDue.Time due(String fault, List<TruthMoment> truth) throws Exception {
        return FaultDue.of(with(fault)).get(0).due(truth);
    }

    @Test
    void aBalanceOfFlowAndPressureTellsWhatTheirTolerancesLeave() {
        assertThat(FaultSigns.LEAST_CONDUCTANCE).isCloseTo(0.0335, within(5e-5));
    }

    @ParameterizedTest(name = "{0} in {1} s: {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "fault: outlet-blocked, at_s: 5, where: 17                       | 10 | false", // 1 of 72: 1.4 %
                "fault: outlet-blocked, at_s: 5, where: 17-18                    | 10 | false", // 2.8 %
                "fault: outlet-blocked, at_s: 5, where: 17-19                    | 10 | true", // 4.2 %
                "fault: outlet-worn, at_s: 5, where: all, how_much: 0.03         | 10 | false",
                "fault: outlet-worn, at_s: 5, where: all, how_much: 0.04         | 10 | true",
                "fault: outlet-leaking, at_s: 5, where: 1-6, how_much: 0.5       | 10 | true", // 3/72: 4.2 %
                "fault: outlet-lost, at_s: 5, where: 17, how_much: 3             | 10 | false", // 2/72: 2.8 %
                "fault: outlet-lost, at_s: 5, where: 17, how_much: 4             | 10 | true", // 3/72
                "fault: section-strainer-plugged, at_s: 5, where: 3, how_much: 0.5 | 10 | false", // 12 · 0.106 / 72:
                // 1.8 %
                "fault: section-strainer-plugged, at_s: 5, where: 3, how_much: 0.7 | 10 | true", // 12 · 0.349 / 72: 5.8
                // %
                "fault: section-stays-shut, at_s: 5, where: 3                    | 10 | true",
                "fault: section-stays-open, at_s: 5, where: 3                    |  5 | false", // it is on
                "fault: switch-dead, at_s: 5, where: 3                           | 10 | true",
                "fault: line-leaking, at_s: 5, how_much: 5                       | 10 | false", // 5 of 162: 3.1 %
                "fault: line-leaking, at_s: 5, how_much: 6                       | 10 | true", // 3.7 %
                "fault: meter-factor-wrong, at_s: 5, how_much: -0.03             | 10 | false",
                "fault: meter-factor-wrong, at_s: 5, how_much: -0.04             | 10 | true",
                "fault: meter-stuck, at_s: 5                                     |  5 | true",
                "fault: meter-hum, at_s: 5, how_much: 13                         | 10 | false", // of 405 Hz: 3.2 %
                "fault: meter-hum, at_s: 5, how_much: 14                         | 10 | true",
                "fault: pressure-offset, at_s: 5, how_much: 13                   | 10 | false", // √(200/213): 3.1 %
                "fault: pressure-offset, at_s: 5, how_much: 15                   | 10 | true", // 3.5 %
                "fault: pressure-span, at_s: 5, how_much: -0.06                  | 10 | false", // 3.1 %
                "fault: pressure-span, at_s: 5, how_much: -0.07                  | 10 | true", // 3.7 %
                "fault: pressure-plugged, at_s: 5                                | 10 | false", // it is steady
                "fault: pressure-loop-broken, at_s: 5                            |  4 | true",
                "fault: height-foam, at_s: 5, where: left-tip                    |  5 | true",
                "fault: height-loose, at_s: 5, where: left-tip, how_much: 0.05   | 10 | false",
                "fault: height-loose, at_s: 5, where: left-tip, how_much: 0.07   | 10 | true",
                "fault: height-double-echo, at_s: 5, where: left-tip, how_much: 0.04 | 10 | false",
                "fault: height-double-echo, at_s: 5, where: left-tip, how_much: 0.06 | 10 | true",
                "fault: hub-hung, at_s: 5                                        |  4 | true",
                "fault: gnss-fix-lost, at_s: 5                                   |  4 | true",
                "fault: gnss-trees, at_s: 5, how_much: 0.5                       | 10 | false", // a run of ten: one in
                // 1,024
                "fault: outlet-twisted, at_s: 5, where: 17                       | 10 | false",
                "fault: height-canopy, at_s: 5, where: left-tip                  | 10 | false",
            })
    void aFaultIsDueFromItsSizeOnWithinItsTime(String fault, double withinS, boolean expected) throws Exception {
        FaultDue.Time due = due(fault.strip(), HandMade.truth(25, HandMade::well));
        assertThat(due != null).isEqualTo(expected);
        if (due != null) {
            assertThat(due.showsS()).isEqualTo(5.0);
            assertThat(due.latestS() - due.showsS()).isCloseTo(withinS, within(1e-9));
        }
    }

    @Test
    void treesAreToldWhenARunOfMissedEpochsIsLikelyInTime() throws Exception {
        // Of 10 epochs a second 95 % are missed: runs of twenty, for a second of silence and one of hold, begin 0.95^20
        // · 0.05 · 10 =
        // 0.179 times a second; 95 % of waits are below 3 of their means, 16.7 s; behind that the 2 s, and 2 s to say
        // so.
        FaultDue.Time due = due("fault: gnss-trees, at_s: 2, how_much: 0.95", HandMade.truth(29, HandMade::well));
        assertThat(due.latestS() - due.showsS()).isCloseTo(20.7, within(0.1));
    }

    @Test
    void aBrownOutIsToldByTheBootCountEvenWhenItIsOver() throws Exception {
        FaultDue.Time due = due("fault: hub-brown-out, at_s: 5, for_s: 0.4", HandMade.truth(25, HandMade::well));
        assertThat(due.latestS()).isCloseTo(9.4, within(1e-9));
    }

    @Test
    void aPluggedPressureShowsWhenTheFlowMovesAway() throws Exception {
        List<TruthMoment> faster = HandMade.truth(
                30,
                t -> HandMade.flowing(
                        t,
                        HandMade.SPEED_MPS,
                        new TruthMoment.Flows(
                                2.7e-3, 2.7e-3, t < 12 ? 200_000 : 216_000, 36, 0b111111, 2.7e-3, 1.5e-3)));
        FaultDue.Time due = due("fault: pressure-plugged, at_s: 5", faster);
        assertThat(due.showsS()).as("√(216/200) is 3.9 % more").isEqualTo(12.0);
    }

    @Test
    void aSectionThatStaysOpenShowsOnceItsSwitchIsOff() throws Exception {
        List<TruthMoment> off = HandMade.truth(
                30,
                t -> HandMade.flowing(
                        t,
                        HandMade.SPEED_MPS,
                        t < 12
                                ? HandMade.WELL
                                : new TruthMoment.Flows(2.7e-3, 2.7e-3, 200_000, 30, 0b111011, 2.3e-3, 1.5e-3)));
        assertThat(due("fault: section-stays-open, at_s: 5, where: 3", off).showsS())
                .isEqualTo(12.0);
        assertThat(due("fault: section-stays-open, at_s: 5, where: 4", off)).isNull();
    }

    /** What is due when the truth is, or for nothing, has no sign of its own; nothing may be forgotten in between. */
    @Test
    void everyFaultThatListsAlertsCanBeTold() throws Exception {
        List<String> byTruth = List.of(
                "strainer-plugged",
                "pump-weak",
                "valve-hunting",
                "valve-stuck",
                "controller-meter-wrong",
                "controller-speed-wrong",
                "wing-stuck",
                "height-control-dead",
                "height-control-slow",
                "boom-set-wrong");
        for (var fault : Faults.all()) {
            boolean listed = !fault.alerts().isEmpty();
            FaultSign sign = sign(fault);
            assertThat(sign.byTruth()).as(fault.id()).isEqualTo(byTruth.contains(fault.id()));
            assertThat(sign.byTruth() || sign.withinS() > 0).as(fault.id()).isEqualTo(listed);
        }
    }

    /** A fault of its usual size, at any place. */
    private static FaultSign sign(Fault fault) throws Exception {
        String where = switch (fault.place()) {
            case NOWHERE -> "";
            case OUTLET -> ", where: all";
            case SECTION -> ", where: 3";
            case HEIGHT_SENSOR -> ", where: left-tip";
            case WING -> ", where: left";
            case WHEEL -> ", where: rear-left";
            case PORT -> ", where: hub";
        };
        if (fault.id().equals("wheel-slipping")) {
            // This machine has no wheel sensor, and the fault lists no alerts.
            return FaultSign.never();
        }
        // At its usual 85 % the receiver is hardly ever silent for long enough.
        String more = fault.id().equals("gnss-trees") ? ", how_much: 0.95" : "";
        return FaultDue.of(with("fault: " + fault.id() + ", at_s: 5" + where + more))
                .get(0)
                .sign();
    }
}
