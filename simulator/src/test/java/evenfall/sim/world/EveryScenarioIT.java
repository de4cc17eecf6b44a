package evenfall.sim.world;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import evenfall.outlet.OutletCatalogue;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds in every built-in scenario, whatever goes wrong in it. */
class EveryScenarioIT {
    /** An hour is not needed to see that bytes differ. */
    private static final long SLICE_US = 60_000_000;

    static List<String> names() {
        return Scenarios.names();
    }

    /** Bytes of a slice; the runner takes as many steps at a time as it likes. */
    private static String digest(Scenario scenario, Random pace) {
        try {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            Consumer<Emission> door = emission -> {
                sha.update((emission.timeUs() + " " + emission.port() + " ").getBytes(StandardCharsets.US_ASCII));
                sha.update(emission.bytes());
            };
            World world = new World(scenario, new TruthLog());
            while (world.timeUs() < Math.min(SLICE_US, world.endUs())) {
                for (int n = 1 + pace.nextInt(50); n > 0 && world.timeUs() < SLICE_US; n--) {
                    world.step(door);
                }
            }
            return HexFormat.of().formatHex(sha.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }

    @ParameterizedTest
    @MethodSource("names")
    void theSameSeedGivesTheSameBytesAtAnyPaceAndAnotherGivesOthers(String name) throws ConfigException {
        Scenario scenario = Scenarios.find(name);
        String first = digest(scenario, new Random(1));
        assertThat(digest(Scenarios.find(name), new Random(2))).isEqualTo(first);
        assertThat(digest(scenario.withSeed(scenario.seed() + 1), new Random(1)))
                .isNotEqualTo(first);
    }

    @ParameterizedTest
    @MethodSource("names")
    void whatLeavesTheTankIsOnTheGroundOrInTheLines(String name) throws ConfigException {
        TruthLog log = new TruthLog();
        Scenario scenario = Scenarios.find(name);
        World world = new World(scenario, log);
        world.run(emission -> {});
        RowLedger ledger = log.ledger();
        double tankL = ledger.outOfTankL();
        assertThat(world.timeUs()).isEqualTo(Math.round(scenario.seconds() * 1e6));
        assertThat(tankL).as("something was put out").isGreaterThan(50);
        double onGroundL = ledger.totalL() + ledger.onNeighboursL() - ledger.fromNeighboursL();
        assertThat(onGroundL + ledger.beforeOutletsL() + ledger.inLinesL()).isCloseTo(tankL, within(1e-9 * tankL));
        assertThat(ledger.leftOutletsL()).isCloseTo(onGroundL, within(1e-9 * tankL));
        double nitrogenKgpL = scenario.world().fitted().liquid().nitrogenKgpM3() / 1000;
        assertThat(ledger.totalNitrogenKg()).isCloseTo(nitrogenKgpL * ledger.totalL(), within(1e-9 * tankL));
    }

    @ParameterizedTest
    @ValueSource(strings = {"level-field", "terrace-crossing", "knolls-at-speed"})
    void whatLeftTheOutletsOfAnyTypeLiesOnTheRows(String name) throws ConfigException {
        for (String outlet : OutletCatalogue.ids()) {
            WorldTest.assertAllIsOnTheRows(name, outlet);
        }
    }
}
