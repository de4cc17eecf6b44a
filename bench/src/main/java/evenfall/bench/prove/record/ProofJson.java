package evenfall.bench.prove.record;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Constant;
import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.report.Json;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The result file. */
public final class ProofJson {
    private static final int DECIMALS = 6;

    private ProofJson() {}

    /**
     * @param rig name of the machine, if known
     * @param atUtc when, as ISO 8601
     * @param given all that was answered and heard
     * @param trialSeed seed of the simulated yard; null where the test was a real one
     * @param written rig file into which the constants went, if they did
     */
    public static ObjectNode of(
            Proof proof,
            @Nullable String rig,
            String atUtc,
            @Nullable Long trialSeed,
            List<Guide.Given> given,
            @Nullable String written) {
        ObjectNode root = Json.object();
        root.put("prove", proof.prover());
        root.put("rig", rig);
        root.put("at_utc", atUtc);
        root.put("simulated", trialSeed != null);
        if (trialSeed != null) {
            root.put("trial_seed", trialSeed);
        }
        root.put("passed", proof.passed());
        ArrayNode findings = root.putArray("findings");
        for (Finding finding : proof.findings()) {
            ObjectNode node = findings.addObject();
            String unit = finding.limit().unit();
            node.put("limit", finding.limit().name());
            node.put("title", finding.limit().title());
            node.set("measured_" + unit, Json.number(finding.measured(), DECIMALS));
            node.set("at_most_" + unit, Json.number(finding.limit().value(), DECIMALS));
            node.put("met", finding.met());
            node.put("source", finding.limit().source());
        }
        ArrayNode constants = root.putArray("constants");
        for (Constant constant : proof.constants()) {
            ObjectNode node = constants.addObject();
            node.put("of", constant.of());
            node.set(constant.key(), Json.number(constant.estimate().value(), 9));
            node.set(
                    "expanded_uncertainty_" + constant.key(),
                    Json.number(constant.estimate().expanded(), 9));
            node.put("rig_place", constant.rigPlace());
        }
        root.put("written_into", written);
        root.set("result", proof.result());
        array(root, "advice", proof.advice());
        array(root, "method", proof.method());
        ArrayNode raw = root.putArray("raw");
        for (Guide.Given one : given) {
            raw.addObject().put("key", one.key()).set("given", RawJson.of(one.reply()));
        }
        return root;
    }

    private static void array(ObjectNode root, String key, List<String> lines) {
        ArrayNode array = root.putArray(key);
        lines.forEach(array::add);
    }
}
