package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import evenfall.sim.world.World;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class UnseenTest {
    private static final Map<String, TruthKeeper> DRIVEN = new HashMap<>();

    private static TruthKeeper drive(Scenario scenario) {
        TruthKeeper keeper = new TruthKeeper(scenario);
        new World(scenario, keeper).run(emission -> {});
        return keeper;
    }

    private static TruthKeeper drive(String name) throws Exception {
        TruthKeeper driven = DRIVEN.get(name);
        if (driven == null) {
            driven = drive(Scenarios.find(name));
            DRIVEN.put(name, driven);
        }
        return driven;
    }

    private static TruthKeeper level(String faults) throws Exception {
        try (var in = Scenarios.class.getResourceAsStream("level-field.yaml")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return drive(Scenarios.written("made", text.replace("  air_C: 12\n", "  air_C: 12\n" + faults)));
        }
    }

    @Test
    void aHealthyMachineShowsTheTruth() throws Exception {
        TruthKeeper keeper = level("");
        assertThat(keeper.shown()).isEqualTo(keeper.moments());
    }

    @Test
    void faultsThatASensorTellsOfShowNothingElse() throws Exception {
        TruthKeeper keeper = level("  faults:\n    - {fault: height-foam, at_s: 2, where: left-tip}\n");
        assertThat(keeper.shown()).isEqualTo(keeper.moments());
    }

    @Test
    void aMeterThatCountsMoreShowsMoreOnlyWhereNoTankTells() throws Exception {
        TruthKeeper keeper = drive("wrong-meter-factor");
        int known = 0;
        for (int i = 0; i < keeper.moments().size(); i++) {
            Double error = keeper.moments().get(i).rateError();
            if (error != null) {
                assertThat(keeper.shown().get(i).rateError()).isCloseTo((1 + error) * 171 / 150 - 1, within(1e-12));
                known++;
            }
        }
        assertThat(known).isGreaterThan(300);
        Scenario tank = Scenarios.find("tank-tells");
        assertThat(Unseen.pulsesTimes(tank)).isNotEqualTo(1);
        TruthKeeper told = drive("tank-tells");
        assertThat(told.shown()).isEqualTo(told.moments());
    }

    @Test
    void aCropUnderOneTipLowersThatWingByItsShare() throws Exception {
        TruthKeeper keeper =
                level("  faults:\n    - {fault: height-canopy, at_s: 4, where: left-tip, how_much: 0.2}\n");
        TruthMoment truth = keeper.moments().get(50);
        TruthMoment shown = keeper.shown().get(50);
        assertThat(keeper.shown().get(10)).isEqualTo(keeper.moments().get(10));
        assertThat(shown.rightWingM()).isCloseTo(truth.rightWingM(), within(1e-12));
        // At the tip's sensor all of it, at the middle one nothing, on a straight line between.
        assertThat(truth.leftWingM() - shown.leftWingM()).isBetween(0.08, 0.2);
        assertThat(shown.rateError()).isEqualTo(truth.rateError());
    }

    @Test
    void aSensorTooHighShowsItsWingTooHigh() throws Exception {
        TruthKeeper keeper =
                level("  faults:\n    - {fault: height-mounted-wrong, at_s: 4, where: right-tip, how_much: 0.2}\n");
        TruthMoment truth = keeper.moments().get(50);
        TruthMoment shown = keeper.shown().get(50);
        assertThat(shown.leftWingM()).isCloseTo(truth.leftWingM(), within(1e-12));
        assertThat(shown.rightWingM() - truth.rightWingM()).isBetween(0.08, 0.2);
    }

    /** On a terrace the height changes along the wing; a tip's sensor that hangs farther in shows the height there. */
    @Test
    void aSensorAtAnotherPlaceShowsTheHeightThere() throws Exception {
        TruthKeeper keeper;
        try (var in = Scenarios.class.getResourceAsStream("terrace-crossing.yaml")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            int air = text.indexOf("  air_C:");
            String faults = "  faults:\n    - {fault: height-misplaced, at_s: 0, where: left-tip, how_much: 8}\n";
            keeper = drive(Scenarios.written("made", text.substring(0, air) + faults + text.substring(air)));
        }
        double apartM = 0;
        for (int i = 0; i < keeper.moments().size(); i++) {
            TruthMoment truth = keeper.moments().get(i);
            TruthMoment shown = keeper.shown().get(i);
            assertThat(shown.rightWingM()).isCloseTo(truth.rightWingM(), within(1e-12));
            apartM = Math.max(apartM, Math.abs(shown.leftWingM() - truth.leftWingM()));
        }
        // A terrace is 0.25 m high: the wing's mean cannot be shown farther off.
        assertThat(apartM).isBetween(0.02, 0.25);
    }

    @Test
    void swappedHeightsShowTheMirrorImage() throws Exception {
        TruthKeeper keeper = drive("foam-on-a-sensor");
        int apart = 0;
        for (int i = 0; i < keeper.moments().size(); i++) {
            TruthMoment truth = keeper.moments().get(i);
            TruthMoment shown = keeper.shown().get(i);
            if (truth.atS() >= 80) {
                double tilt = truth.rightWingM() - truth.leftWingM();
                // Outlets between sensors are on no straight line, so a few centimetres are left.
                assertThat(shown.rightWingM() - shown.leftWingM()).isCloseTo(-tilt, within(0.06));
                apart += Math.abs(tilt) > 0.1 ? 1 : 0;
            }
        }
        assertThat(apart).as("moments at which it matters").isPositive();
    }

    @Test
    void whatTheShownHeightsAskForIsMisledAndWhatTheyDoNotIsFalse() {
        List<TruthMoment> truth = HandMade.truth(20, HandMade::well);
        List<TruthMoment> shown =
                HandMade.truth(20, t -> t < 8 ? HandMade.well(t) : HandMade.moment(t, 5, 0.0, 0.3, 0.5, 0.05));
        var left = HandMade.alert("wing-low", "left", 9.2, null);
        var right = HandMade.alert("wing-low", "right", 9.2, null);
        var early = HandMade.alert("wing-low", "left", 3.0, 4.0);
        Score score = HandMade.misled(truth, shown, left, right, early);
        assertThat(score.misled()).isEqualTo(1);
        assertThat(score.falseAlerts()).isEqualTo(2);
        assertThat(HandMade.misled(truth, truth, left).falseAlerts()).isEqualTo(1);
    }

    @Test
    void whatIsDueAndDoesNotShowIsMisledAndNotMissed() {
        List<TruthMoment> truth =
                HandMade.truth(20, t -> t < 8 ? HandMade.well(t) : HandMade.moment(t, 5, 0.12, 0.5, 0.5, 0.05));
        List<TruthMoment> shown = HandMade.truth(20, HandMade::well);
        assertThat(HandMade.misled(truth, shown).misled()).isEqualTo(1);
        assertThat(HandMade.misled(truth, shown).missed()).isZero();
        assertThat(HandMade.misled(truth, truth).missed()).isEqualTo(1);
        assertThat(HandMade.misled(truth, truth).misled()).isZero();
    }

    @Test
    void aMeterWrongFromTheStartIsDueWhereToleranceDoesNotExplainIt() throws Exception {
        assertThat(dueOf("wrong-meter-factor")).isEqualTo(List.of("outlet-open"));
        assertThat(dueOf("tank-tells")).as("7 % may be tolerance").isEmpty();
    }

    private static List<String> dueOf(String name) throws Exception {
        Scenario scenario = Scenarios.find(name);
        List<TruthMoment> moments = drive(name).moments();
        for (FaultDue fault : FaultDue.of(scenario)) {
            if (fault.fault().equals("meter-factor-wrong")) {
                return fault.due(moments) == null ? List.of() : fault.kinds();
            }
        }
        return List.of();
    }
}
