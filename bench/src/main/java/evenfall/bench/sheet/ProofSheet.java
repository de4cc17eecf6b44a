package evenfall.bench.sheet;

import static j2html.TagCreator.div;
import static j2html.TagCreator.each;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.ul;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import evenfall.bench.page.DataTable;
import evenfall.bench.page.Page;
import evenfall.bench.page.Picture;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import j2html.tags.DomContent;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/**
 * A proof's result file on a page: what was measured against which limit, the constants with their uncertainty, how it was done.
 *
 * <p>Reads the file as an outsider does: {@code prove}, {@code rig}, {@code at_utc}, {@code simulated}, {@code trial_seed}, {@code passed}, {@code findings} (title, {@code
 * measured_UNIT}, {@code at_most_UNIT}, met, source), {@code constants} (of, a number under its key, {@code
 * expanded_uncertainty_KEY}, rig_place), {@code advice}, {@code method}. What is absent is shown as not known.
 */
public final class ProofSheet implements Sheet {
    private static final String ALLOWED = "the result file of evenfall prove";
    private static final String UNCERTAIN = "expanded_uncertainty_";
    private static final String MEASURED = "measured_";
    private static final int UNCERTAINTY_DIGITS = 2;
    private static final int FINDING_DIGITS = 4;
    private static final int LARGEST_B = 50_000_000;
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    private final JsonNode proof;

    private ProofSheet(JsonNode proof) {
        this.proof = proof;
    }

    /**
     * @throws ConfigException where it is no proof's result
     */
    public static ProofSheet read(Path file) throws ConfigException {
        try {
            if (Files.size(file) > LARGEST_B) {
                throw new ConfigException(file.toString(), 0, null, "is larger than any proof", ALLOWED);
            }
            JsonNode root = JSON.readTree(file.toFile());
            if (!root.path("prove").isTextual() || !root.path("findings").isArray()) {
                throw new ConfigException(file.toString(), 0, null, "says nothing of a proof", ALLOWED);
            }
            return new ProofSheet(root);
        } catch (IOException e) {
            throw new ConfigException(
                    file.toString(),
                    0,
                    null,
                    "cannot be read (" + FileCheck.reason(e).lines().findFirst().orElse("") + ")",
                    ALLOWED);
        }
    }

    @Override
    public String html() {
        boolean passed = proof.path("passed").asBoolean();
        Page page = new Page(
                        "Proof: " + proof.path("prove").asText(),
                        List.of("Machine " + text(proof.path("rig")) + ", "
                                + text(proof.path("at_utc")).replace("T", ", ").replace("Z", " UTC")))
                .lead(passed ? "Passed: every limit is met." : "Not passed: a limit is not met, or was not measured.");
        if (proof.path("simulated").asBoolean()) {
            page.with(div(p("Simulated: the machine and what was measured on it are invented, seed "
                            + text(proof.path("trial_seed")) + ". It proves nothing about a real one."))
                    .withClass("unknown"));
        }
        page.section("Measured against its limits", Page.block(findings()));
        if (proof.path("constants").size() > 0) {
            page.section(
                    "Constants found",
                    Page.block(constants()),
                    Page.note("± is the expanded uncertainty, as the proof's method says below."));
        }
        list(page, "Advice", proof.path("advice"));
        list(page, "How it was done", proof.path("method"));
        return page.caution(CAUTION).html();
    }

    @Override
    public List<Picture> pictures() {
        return List.of();
    }

    private static void list(Page page, String heading, JsonNode lines) {
        if (lines.size() > 0) {
            List<String> texts = new ArrayList<>();
            lines.forEach(line -> texts.add(line.asText()));
            page.section(heading, ul(each(texts, text -> li(text))));
        }
    }

    private DomContent findings() {
        DataTable table = new DataTable(2, "", "source of the limit", "measured", "at most", "met");
        for (JsonNode finding : proof.path("findings")) {
            String unit = keyAfter(finding, MEASURED);
            table.row(
                    text(finding.path("title")),
                    text(finding.path("source")),
                    number(finding.path(MEASURED + unit), unit),
                    number(finding.path("at_most_" + unit), unit),
                    finding.path("met").asBoolean() ? "yes" : "NO");
        }
        return table.html();
    }

    private DomContent constants() {
        DataTable table = new DataTable(2, "", "place in the rig file", "value", "±");
        for (JsonNode constant : proof.path("constants")) {
            String key = keyAfter(constant, UNCERTAIN);
            String[] both = rounded(constant.path(key), constant.path(UNCERTAIN + key));
            table.row(text(constant.path("of")), text(constant.path("rig_place")), both[0] + " " + named(key), both[1]);
        }
        return table.html();
    }

    private static String keyAfter(JsonNode node, String prefix) {
        Iterator<String> names = node.fieldNames();
        while (names.hasNext()) {
            String name = names.next();
            if (name.startsWith(prefix)) {
                return name.substring(prefix.length());
            }
        }
        return "";
    }

    private static String text(JsonNode node) {
        return node.isValueNode() && !node.isNull() ? node.asText() : Words.NOT_KNOWN;
    }

    /** A value and its expanded uncertainty, both to two digits of the uncertainty, as the GUM asks (JCGM 100:2008, 7.2.6). */
    static String[] rounded(JsonNode value, JsonNode uncertainty) {
        if (!value.isNumber()) {
            return new String[] {Words.NOT_KNOWN, Words.NOT_KNOWN};
        }
        if (!uncertainty.isNumber() || uncertainty.decimalValue().signum() <= 0) {
            return new String[] {value.asText(), Words.NOT_KNOWN};
        }
        BigDecimal two = uncertainty.decimalValue().round(new MathContext(UNCERTAINTY_DIGITS));
        return new String[] {
            value.decimalValue().setScale(two.scale(), RoundingMode.HALF_UP).toPlainString(), two.toPlainString()
        };
    }

    private static String number(JsonNode node, String unit) {
        return node.isNumber()
                ? node.decimalValue()
                                .round(new MathContext(FINDING_DIGITS))
                                .stripTrailingZeros()
                                .toPlainString()
                        + (unit.isEmpty() ? "" : " " + named(unit))
                : Words.NOT_KNOWN;
    }

    private static String named(String unit) {
        return unit.equals("pct") ? "%" : unit.replace('_', ' ');
    }
}
