package evenfall.bench.prove.talk;

import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.report.Paint;
import evenfall.bench.report.Wrap;
import evenfall.quantity.FixedDecimals;
import java.util.ArrayList;
import java.util.List;

/** A result for people: the verdict first. */
public final class ProofText {
    private ProofText() {}

    public static List<String> lines(Proof proof, Paint paint, int columns) {
        List<String> lines = new ArrayList<>();
        long failed = proof.findings().stream().filter(f -> !f.met()).count();
        lines.add(
                proof.passed()
                        ? paint.good("PASS") + "  " + proof.prover() + ": all "
                                + proof.findings().size() + " limits met"
                        : paint.bad("FAIL") + "  " + proof.prover() + ": " + failed + " of "
                                + proof.findings().size() + " limits not met");
        lines.add("");
        lines.addAll(proof.lines());
        lines.add("");
        for (Finding finding : proof.findings()) {
            String mark = finding.met() ? paint.good("ok  ") : paint.bad("NOT ");
            lines.add("  " + mark + finding.limit().title() + ": " + measured(finding) + "  "
                    + paint.faint("(" + finding.limit().name() + ")"));
        }
        for (String advice : proof.advice()) {
            List<String> wrapped = Wrap.lines(advice, columns - 4);
            for (int i = 0; i < wrapped.size(); i++) {
                lines.add((i == 0 ? "  → " : "    ") + wrapped.get(i));
            }
        }
        return lines;
    }

    private static String measured(Finding finding) {
        if (finding.limit().value() == 0) {
            return finding.measured() == 0 ? "none" : number(finding.measured());
        }
        return number(finding.measured()) + " " + unit(finding) + ", at most "
                + number(finding.limit().value());
    }

    private static String unit(Finding finding) {
        String unit = finding.limit().unit();
        return unit.equals("pct") ? "%" : unit.equals("C") ? "°C" : unit;
    }

    private static String number(double value) {
        String text = FixedDecimals.text(value, 2);
        return text.endsWith(".00") ? text.substring(0, text.length() - 3) : text;
    }
}
