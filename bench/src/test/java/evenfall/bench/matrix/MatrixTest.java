package evenfall.bench.matrix;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.bench.report.Json;
import evenfall.bench.report.Paint;
import evenfall.bench.score.FaultOutcome;
import evenfall.bench.score.Figures;
import evenfall.bench.score.ScoredAlert;
import evenfall.bench.score.Senses;
import evenfall.sim.scenario.Scenario;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class MatrixTest {
    private static final Wanted NONE = new Wanted(List.of(), List.of(), List.of(1L), false, false, 0);

    private static Marked run(Group group, String name, List<ScoredAlert> alerts, List<FaultOutcome> faults) {
        return new Marked(
                new Task(group, name, "five-stream", () -> {
                    throw new IllegalStateException("nobody runs this");
                }),
                "C",
                1800,
                faults.isEmpty(),
                new Figures(0.0, 0.0, 0.05, 0.1),
                new Figures(0.0, 0.0, 0.05, 0.1),
                alerts,
                0,
                faults,
                new Senses());
    }

    private static FaultOutcome outcome(FaultOutcome.Verdict verdict, @Nullable Double raisedS) {
        return new FaultOutcome(
                "hub-hung", "boom", verdict, 20.0, 3.0, raisedS, raisedS == null ? null : "sensor-silent");
    }

    private static Limit faults(Matrix matrix) {
        return Limit.of(matrix).get(0);
    }

    @Test
    void nineteenOfTwentyInTimeReachTheLimitAndEighteenDoNot() {
        for (int inTime : new int[] {19, 18}) {
            Matrix matrix = new Matrix(NONE);
            for (int i = 0; i < 20; i++) {
                FaultOutcome outcome = i < inTime
                        ? outcome(FaultOutcome.Verdict.IN_TIME, 20 + i / 10.0)
                        : outcome(FaultOutcome.Verdict.MISSED, null);
                matrix.count(run(Group.FAULTS, "hub-hung", List.of(), List.of(outcome)));
            }
            assertThat(faults(matrix).measured()).isCloseTo(5.0 * inTime, within(1e-9));
            assertThat(faults(matrix).reached()).isEqualTo(inTime == 19);
            assertThat(faults(matrix).failing()).isEqualTo(inTime == 19 ? List.of() : List.of("hub-hung"));
            assertThat(Limit.anyMissed(Limit.of(matrix))).isEqualTo(inTime == 18);
            assertThat(matrix.alone().get("hub-hung").delaysS().percentile(0.5)).isBetween(0.8, 1.02);
        }
    }

    @Test
    void aFaultThatIsNeverDueHoldsNobodyToAnything() {
        Matrix matrix = new Matrix(NONE);
        matrix.count(run(
                Group.FAULTS,
                "outlet-blocked 17",
                List.of(),
                List.of(new FaultOutcome(
                        "outlet-blocked", "17", FaultOutcome.Verdict.NOT_DUE, null, null, null, null))));
        assertThat(faults(matrix).measured()).isNull();
        assertThat(faults(matrix).reached()).isNull();
        assertThat(Limit.anyMissed(Limit.of(matrix))).isFalse();
    }

    @Test
    void oneFalseAlarmInTheCleanHoursIsTooMany() {
        Matrix matrix = new Matrix(NONE);
        matrix.count(run(Group.CLEAN, "C", List.of(), List.of()));
        assertThat(Limit.of(matrix).get(1).reached()).isTrue();
        matrix.count(run(
                Group.CLEAN,
                "C",
                List.of(
                        new ScoredAlert("wing-low", "left", null, null, ScoredAlert.Verdict.FALSE, null),
                        new ScoredAlert("wing-high", "left", 4.0, null, ScoredAlert.Verdict.MISSED, null)),
                List.of()));
        assertThat(Limit.of(matrix).get(1).reached()).isFalse();
        assertThat(Limit.of(matrix).get(1).failing()).containsExactly("wing-low 1");
        assertThat(matrix.groups().get(Group.CLEAN).unfoundedPerHour()).isEqualTo(1);
        assertThat(matrix.events().get("wing-high").due()).isEqualTo(1);
    }

    @Test
    void howManyRunAtATimeChangesNothing() throws Exception {
        Wanted wanted = new Wanted(
                List.of("level-field", "wet-hub"),
                List.of("five-stream", "three-stream"),
                List.of(1L, 2L),
                false,
                false,
                0);
        Matrix one = Runs.make(wanted, 1, (runs, of) -> {});
        Matrix many = Runs.make(wanted, 3, (runs, of) -> {});
        assertThat(Json.text(MatrixJson.of(many))).isEqualTo(Json.text(MatrixJson.of(one)));
        assertThat(one.runs()).isEqualTo(8);
        assertThat(new MatrixText(Paint.OFF).lines(one))
                .anyMatch(line -> line.contains("level-field"))
                .anyMatch(line -> line.contains("hub-brown-out"))
                .anyMatch(line -> line.contains("speed, m/s"));
    }

    @Test
    void aCleanHourHasTurnsAPaceThatWandersAndNothingWrong() throws Exception {
        Scenario one = CleanHour.scenario("C", "three-stream", 101_000);
        Scenario other = CleanHour.scenario("C", "three-stream", 102_001);
        assertThat(one.seconds()).isEqualTo(3600);
        assertThat(one.world().faults()).isEmpty();
        assertThat(one.world().sections().switches()).hasSizeGreaterThan(40);
        assertThat(one.world().drive().changes()).hasSizeBetween(100, 200);
        assertThat(one.world().drive().changes())
                .allMatch(change -> change.speedMps() > 3.9 && change.speedMps() < 6.1)
                .isNotEqualTo(other.world().drive().changes());
        assertThat(one.world().drive().path().lengthM()).isGreaterThan(17_000);
    }
}
