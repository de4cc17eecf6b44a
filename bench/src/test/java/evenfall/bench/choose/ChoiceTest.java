package evenfall.bench.choose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenfall.config.ConfigException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChoiceTest {
    private static final String PRICES = """
            currency: EUR
            note: invented
            outlets:
              - {outlet: three-stream, each: 5, once: 1}
              - {outlet: five-stream, each: 6}
              - {outlet: six-stream, each: 7}
              - {outlet: seven-stream, each: 9}
              - {outlet: streamer-bar, each: 40}
            """;

    private static Choice choice(String prices, String weights) throws ConfigException {
        return Choice.of(
                Asked.usual(),
                Asked.all(),
                prices.isEmpty() ? Prices.none() : Prices.parse("prices.yaml", prices),
                weights.isEmpty() ? Weights.equal() : Weights.parse(weights));
    }

    private static String first(Choice choice) {
        return choice.ranked().get(0).candidate().type().id();
    }

    private static Choice.Ranked find(Choice choice, String outlet) {
        return choice.ranked().stream()
                .filter(one -> one.candidate().type().id().equals(outlet))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aCostThatIsNotKnownIsNotZeroAndIsLeftOut() throws ConfigException {
        Choice choice = choice("", "");
        assertThat(choice.leftOut()).containsExactly(Criterion.COST);
        assertThat(choice.ranked()).allSatisfy(one -> {
            assertThat(one.candidate().cost().amount()).isNull();
            assertThat(one.candidate().cost().why()).contains("no price file");
            assertThat(one.scores()).doesNotContainKey(Criterion.COST);
        });
    }

    @Test
    void oneMissingPriceLeavesTheCriterionOutForAll() throws ConfigException {
        Choice choice = choice(PRICES.replace("  - {outlet: six-stream, each: 7}\n", ""), "");
        assertThat(choice.leftOut()).containsExactly(Criterion.COST);
        assertThat(find(choice, "six-stream").candidate().cost().why()).contains("prices.yaml");
        assertThat(find(choice, "five-stream").candidate().cost().amount()).isNotNull();
    }

    /** 72 places, two sets of three-stream at 5 and 1 once for each place: 72 · (1 + 2 · 5); one set of bars: 72 · 40. */
    @Test
    void costIsForAllPlacesAndSets() throws ConfigException {
        Choice choice = choice(PRICES, "");
        assertThat(find(choice, "three-stream").candidate().cover().sets()).isEqualTo(2);
        assertThat(find(choice, "three-stream").candidate().cost().amount()).isEqualTo(792);
        assertThat(find(choice, "streamer-bar").candidate().cost().amount()).isEqualTo(2880);
    }

    @Test
    void whatWeighsMoreComesFirst() throws ConfigException {
        assertThat(first(choice(PRICES, "cost=100"))).isEqualTo("three-stream");
        assertThat(first(choice(PRICES, "tolerance=100,sets=100"))).isEqualTo("streamer-bar");
        assertThat(first(choice(PRICES, "tolerance=0,sets=0,contact=0,cost=1,handling=1")))
                .isEqualTo("three-stream");
    }

    @Test
    void scoresAreTheirWeightedMean() throws ConfigException {
        for (Choice.Ranked one : choice(PRICES, "cost=3,handling=0").ranked()) {
            double sum = 3 * one.scores().get(Criterion.COST)
                    + one.scores().get(Criterion.TOLERANCE)
                    + one.scores().get(Criterion.SETS)
                    + one.scores().get(Criterion.CONTACT);
            assertThat(one.score()).isCloseTo(sum / 6, within(1e-12));
            assertThat(one.scores().values()).allMatch(score -> score >= 0 && score <= 1);
        }
    }

    @Test
    void whatDoesNotReachTheRangeComesLastWithoutAScore() throws ConfigException {
        Job job = Asked.job(Asked.lpha(150, 250), Asked.kmh(8, 14), Asked.kPa(70, 90));
        Choice choice = Choice.of(job, Asked.all(), Prices.none(), Weights.equal());
        assertThat(first(choice)).isEqualTo("streamer-bar");
        assertThat(choice.ranked().subList(1, 5))
                .allMatch(one -> one.score() == null && one.candidate().cover() == null);
    }

    @Test
    void weighedByNothingThatIsKnownThereIsNoScore() throws ConfigException {
        Choice choice = choice("", "cost=1,tolerance=0,sets=0,contact=0,handling=0");
        assertThat(choice.ranked()).allMatch(one -> one.score() == null);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "price=2", "cost", "cost=", "cost=-1", "cost=NaN", "cost=1e9", "cost=1,cost=2", "cost=1,"})
    void weightsThatMakeNoSenseAreRefused(String text) {
        assertThatThrownBy(() -> Weights.parse(text))
                .isInstanceOf(ConfigException.class)
                .hasMessageContaining("option --weigh")
                .hasMessageContaining("cost, tolerance, sets, contact, handling");
    }

    @Test
    void noWeightAtAllIsRefused() {
        assertThatThrownBy(() -> Weights.parse("cost=0,tolerance=0,sets=0,contact=0,handling=0"))
                .hasMessageContaining("no weight is above 0");
    }

    @Test
    void aPriceFileThatIsWrongIsRefusedWithItsLine() {
        assertThatThrownBy(() -> Prices.parse("prices.yaml", PRICES.replace("each: 6", "each: -6")))
                .hasMessageContaining("prices.yaml:5: outlets[2].each: -6 cannot be used")
                .hasMessageContaining("at least 0");
        assertThatThrownBy(() -> Prices.parse("prices.yaml", PRICES.replace("currency: EUR", "currency: euro")))
                .hasMessageContaining("prices.yaml:1: currency")
                .hasMessageContaining("three capital letters");
        assertThatThrownBy(() -> Prices.parse("prices.yaml", PRICES.replace("six-stream", "five-stream")))
                .hasMessageContaining("prices.yaml:6")
                .hasMessageContaining("two prices for five-stream");
    }
}
