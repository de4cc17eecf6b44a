package evenfall.bench.prove.guide;

import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.measure.Finding;
import java.util.List;

/**
 * What came out.
 *
 * @param prover flow, height, speed, outlets or wiring
 * @param findings measures beside their limits
 * @param constants found
 * @param result all results, units in their keys
 * @param method how it was done and by what formulas
 * @param lines for people, plain text
 * @param advice what to do now
 */
public record Proof(
        String prover,
        List<Finding> findings,
        List<Constant> constants,
        ObjectNode result,
        List<String> method,
        List<String> lines,
        List<String> advice) {
    public Proof {
        findings = List.copyOf(findings);
        constants = List.copyOf(constants);
        method = List.copyOf(method);
        lines = List.copyOf(lines);
        advice = List.copyOf(advice);
    }

    /** Whether every limit is met. */
    public boolean passed() {
        return findings.stream().allMatch(Finding::met);
    }
}
