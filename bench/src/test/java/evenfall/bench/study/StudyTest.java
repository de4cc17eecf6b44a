package evenfall.bench.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import evenfall.sim.scenario.Scenario;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StudyTest {
    private static final Grid GRID = new Grid(
            List.of("B", "D"),
            List.of("three-stream", "streamer-bar"),
            List.of(12.0),
            List.of(0.5),
            List.of(1L, 2L),
            6,
            160);

    @TempDir
    Path folder;

    @TempDir
    Path other;

    private static void makeAll(StudyStore store, int jobs) throws Exception {
        Studying.make(GRID, store, jobs, (made, kept, of) -> {});
    }

    @Test
    void aStudyThatWasBrokenOffGoesOnAndEndsAsOneThatWasNot() throws Exception {
        String whole;
        try (StudyStore store = StudyStore.open(other, GRID, false)) {
            makeAll(store, 1);
            whole = StudyCsv.text(GRID, store.all());
        }
        try (StudyStore store = StudyStore.open(folder, GRID, false)) {
            assertThatThrownBy(() -> Studying.make(GRID, store, 2, (made, kept, of) -> {
                        if (made == 3) {
                            throw new IllegalStateException("broken off");
                        }
                    }))
                    .hasMessage("broken off");
        }
        try (StudyStore store = StudyStore.open(folder, GRID, true)) {
            int there = store.all().size();
            assertThat(there).isBetween(3, 7);
            assertThat(Studying.make(GRID, store, 2, (made, kept, of) -> {
                        assertThat(of).isEqualTo(8);
                        assertThat(kept).isEqualTo(there + made);
                    }))
                    .isEqualTo(8 - there);
            assertThat(StudyCsv.text(GRID, store.all())).isEqualTo(whole);
            assertThat(new StudySheet(GRID, store.all(), Units.METRIC).html())
                    .contains(
                            "Most even: streamer-bar on B, streamer-bar on D.", "are invented", "Relieve the pressure");
        }
        assertThat(whole.split("\r\n")).hasSize(9).doesNotHaveDuplicates();
    }

    @Test
    void everyCaseHasItsTurnOnceHoweverMachinesAreTakenTogether() {
        Grid wide = new Grid(
                List.of("B", "C"),
                List.of("three-stream", "five-stream", "six-stream", "seven-stream"),
                List.of(6.0, 8.0, 10.0, 12.0, 14.0),
                List.of(0.4, 0.5),
                List.of(1L, 2L, 3L),
                20,
                160);
        assertThat(wide.cases()).hasSize(240).doesNotHaveDuplicates();
        assertThat(wide.inTurn()).containsExactlyInAnyOrderElementsOf(wide.cases());
        // Of the machines so far none comes back once the next few have begun: their tables need not be kept.
        List<String> machines = wide.inTurn().stream()
                .map(one -> one.outlet() + " " + one.speedKmh())
                .toList();
        assertThat(machines.subList(0, 144)).doesNotContainAnyElementsOf(machines.subList(144, 240));
    }

    /** Read by plain SQL, as anybody would. */
    @Test
    void theFileIsPlainSqlite() throws Exception {
        try (StudyStore store = StudyStore.open(folder, GRID, false)) {
            Case one = GRID.cases().get(0);
            store.add(one, new Outcome(0.1, 0.2, null, 0.05, 3.0, null, 4, 1, 0));
            assertThatThrownBy(() -> store.add(one, new Outcome(0.1, 0.2, null, 0.05, 3.0, null, 4, 1, 0)))
                    .isInstanceOf(IOException.class);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve(StudyStore.FILE));
                Statement statement = connection.createStatement()) {
            try (ResultSet rows =
                    statement.executeQuery("SELECT ground, seed, row_cv_p95, below_80_share, alerts_raised FROM run")) {
                assertThat(rows.next()).isTrue();
                assertThat(rows.getString(1)).isEqualTo("B");
                assertThat(rows.getLong(2)).isEqualTo(1);
                assertThat(rows.getDouble(3)).isEqualTo(0.2);
                assertThat(rows.getObject(4)).isNull();
                assertThat(rows.getInt(5)).isEqualTo(4);
                assertThat(rows.next()).isFalse();
            }
            try (ResultSet mode = statement.executeQuery("PRAGMA journal_mode")) {
                assertThat(mode.next()).isTrue();
                assertThat(mode.getString(1)).isEqualTo("wal");
            }
        }
    }

    @Test
    void anotherStudyIsNotMixedInAndTwoProgramsDoNotShareOne() throws Exception {
        assertThatThrownBy(() -> StudyStore.open(folder, GRID, true))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("holds no study");
        try (StudyStore store = StudyStore.open(folder, GRID, false)) {
            assertThat(store.all()).isEqualTo(Map.of());
            assertThatThrownBy(() -> StudyStore.open(folder, GRID, true))
                    .isInstanceOf(ConfigException.class)
                    .hasMessageContaining("another program");
        }
        Grid longer = new Grid(
                GRID.grounds(), GRID.outlets(), GRID.speedsKmh(), GRID.heightsM(), GRID.seeds(), 7, GRID.rateLpha());
        assertThatThrownBy(() -> StudyStore.open(folder, longer, true))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("another study");
        assertThatThrownBy(() -> StudyStore.open(folder, GRID, false))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("already");
        assertThat(StudyStore.gridOf(folder)).isEqualTo(GRID);
    }

    /**
     * Q = rate · speed · spacing, by hand: 160 L/ha at 12 km/h over 0.5 m is 160 · 12 · 0.5 / 600 = 1.6 L/min of product, which takes
     * 1.6 · √1.28 of water (the density of UAN 28 is 1.28 kg/L at 16 °C, as tables of its makers print it; from memory).
     */
    @Test
    void theMachineIsFittedForRateAndSpeed() throws Exception {
        Scenario scenario = StudyField.scenario(new Case("D", "seven-stream", 12, 0.45, 77), GRID);
        assertThat(scenario.belief().outlet().id()).isEqualTo("seven-stream");
        assertThat(scenario.belief().outlet().ratedFlowM3ps() / TradeUnits.LPM_M3PS)
                .isCloseTo(1.6 * Math.sqrt(1.28), within(0.01));
        assertThat(scenario.belief().target().heightM()).isEqualTo(0.45);
        assertThat(scenario.seed()).isEqualTo(77);
        assertThat(scenario.seconds()).isEqualTo(6);
        assertThat(scenario.belief().limits().rowCv()).isEqualTo(StudySheet.LIMIT_CV);
    }
}
