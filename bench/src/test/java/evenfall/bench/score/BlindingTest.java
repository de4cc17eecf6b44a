package evenfall.bench.score;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.sim.scenario.Scenarios;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BlindingTest {
    private static Blinding with(String fault) throws Exception {
        try (var in = Scenarios.class.getResourceAsStream("level-field.yaml")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Blinding.of(Scenarios.written(
                    "made", text.replace("  air_C: 12\n", "  air_C: 12\n  faults:\n    - {" + fault + "}\n")));
        }
    }

    @ParameterizedTest(name = "{0}: {1} {2} {3}")
    @CsvSource(
            delimiter = '|',
            value = {
                "fault: height-deaf, at_s: 10, for_s: 5, where: left-tip  | wing-low     | left  | true",
                "fault: height-deaf, at_s: 10, for_s: 5, where: left-tip  | wing-low     | right | false",
                "fault: height-deaf, at_s: 10, for_s: 5, where: left-tip  | strike-ahead | left  | true",
                "fault: height-deaf, at_s: 10, for_s: 5, where: left-tip  | bands-gapped | boom  | true",
                "fault: height-deaf, at_s: 10, for_s: 5, where: left-tip  | rate-low     | boom  | false",
                "fault: height-deaf, at_s: 10, for_s: 5, where: centre    | wing-low     | right | true",
                "fault: heights-swapped, at_s: 10, for_s: 5               | wing-low     | right | true",
                "fault: meter-stuck, at_s: 10, for_s: 5                   | rate-low     | boom  | true",
                "fault: meter-stuck, at_s: 10, for_s: 5                   | wing-low     | left  | false",
                "fault: pressure-loop-broken, at_s: 10, for_s: 5          | pressure-outside | boom | true",
                "fault: hub-hung, at_s: 10, for_s: 5                      | wing-low     | left  | true",
                "fault: cable-noise, at_s: 10, for_s: 5, where: hub       | wing-low     | left  | false",
                "fault: outlet-blocked, at_s: 10, for_s: 5, where: 17     | bands-gapped | boom  | true",
                "fault: outlet-blocked, at_s: 10, for_s: 5, where: 17     | rate-low     | boom  | false",
                "fault: line-leaking, at_s: 10, for_s: 5                  | rate-low     | boom  | true",
                "fault: line-leaking, at_s: 10, for_s: 5                  | pressure-outside | boom | false",
                "fault: air-in-line, at_s: 10, for_s: 5                   | rate-low     | boom  | true",
                "fault: pump-weak, at_s: 10, for_s: 5                     | rate-low     | boom  | false",
            })
    void aFaultHidesWhatRestsOnItAndNoMore(String fault, String kind, String place, boolean hides) throws Exception {
        assertThat(with(fault.strip()).covers(List.of(kind.strip()), place.strip(), 11, 14))
                .isEqualTo(hides);
    }

    @Test
    void itHidesNothingBeforeItComesNorLongAfterItHasGone() throws Exception {
        Blinding blinding = with("fault: hub-hung, at_s: 10, for_s: 5");
        assertThat(blinding.covers(List.of("rate-low"), "boom", 5, 9.9)).isFalse();
        assertThat(blinding.covers(List.of("rate-low"), "boom", 5, 10)).isTrue();
        assertThat(blinding.covers(List.of("rate-low"), "boom", 18, 25)).isTrue();
        assertThat(blinding.covers(List.of("rate-low"), "boom", 18.1, 25)).isFalse();
    }

    @Test
    void whatWasDueUnseenIsNotMissed() {
        List<TruthMoment> low = HandMade.truth(
                20,
                t -> t >= 4 && t < 9
                        ? HandMade.moment(t, HandMade.SPEED_MPS, -0.12, 0.5, 0.5, 0.05)
                        : HandMade.well(t));
        Blinding.Blind dark = new Blinding.Blind(3, 8, (kind, place) -> kind.startsWith("rate"));
        Score hidden = HandMade.score(low, new Blinding(List.of(dark)));
        assertThat(hidden.alerts()).extracting(ScoredAlert::verdict).containsExactly(ScoredAlert.Verdict.BLINDED);
        assertThat(hidden.missed()).isZero();
        assertThat(HandMade.score(low).missed()).isEqualTo(1);
    }
}
