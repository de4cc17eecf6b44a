package evenfall.bench.matrix;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.bench.run.LeanRun;
import evenfall.bench.score.Senses;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The limits of the matrix for the type that is the hardest to know, on a seed that neither tuning nor scoring has. */
class GroundBenchTest {
    private static final long SEED = 31;

    @ParameterizedTest
    @CsvSource({"C, three-stream, 3", "D, three-stream, 6", "C, five-stream, 3", "D, five-stream, 6"})
    void rowCvIsKnownToThePointsThatAreWanted(String roughness, String outlet, double points) throws Exception {
        var score = LeanRun.score(GroundBench.scenario(roughness, outlet, SEED));
        Double p95 = score.senses().of(Senses.ROW_CV).p95();
        assertThat(p95).isNotNull().isLessThanOrEqualTo(points);
    }
}
