package evenfall.bench.choose;

import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The answer of {@code choose} for people: the verdict, a table, and the reasons. */
public final class ChooseText {
    private static final Pattern UNIT_AHEAD =
            Pattern.compile("(?<=[0-9]) (?=(?:%|m|in|kPa|psi|km/h|mph|L/ha|L/min|US)(?:$|[^a-z]))|(?<=US) (?=g)");
    private static final String GLUE = "\u00a0";

    private final Units units;
    private final Paint paint;
    private final int columns;

    /**
     * @param columns characters a line may have
     */
    public ChooseText(Units units, Paint paint, int columns) {
        this.units = units;
        this.paint = paint;
        this.columns = columns;
    }

    public List<String> lines(Choice choice) {
        Words words = new Words(choice, units);
        List<String> lines = new ArrayList<>();
        for (String line : words.question()) {
            wrap(lines, "", line);
        }
        lines.add("");
        List<String> verdict = new ArrayList<>();
        wrap(verdict, "", words.verdict());
        verdict.forEach(line -> lines.add(paint.strong(line)));
        lines.add("");
        lines.addAll(table(choice, words));
        faint(
                lines,
                "heights: where rows keep a CV of "
                        + Units.percent(choice.job().limitCv())
                        + ". even: share of the heights the boom visits at which they do. CV: row CV to expect while the height wanders. leaf: leaf"
                        + " contact over the least.");
        lines.add("");
        for (int i = 0; i < choice.ranked().size(); i++) {
            reasons(lines, i + 1, choice.ranked().get(i), words);
        }
        lines.add("");
        for (CoverGroup group : CoverGroup.of(choice)) {
            reach(lines, group, words);
        }
        for (boolean bar : new boolean[] {true, false}) {
            if (choice.ranked().stream().anyMatch(one -> one.candidate().bar() == bar)) {
                lines.add(paint.strong(HandlingNotes.title(bar)));
                for (String note : HandlingNotes.of(bar)) {
                    wrap(lines, "  · ", note);
                }
            }
        }
        lines.add("");
        faint(lines, words.weights() + (words.leftOut() == null ? "" : " " + words.leftOut()));
        faint(lines, LeafContact.CAVEAT + " " + words.factors());
        faint(lines, ASSUMED);
        faint(lines, CAUTION);
        return lines;
    }

    static final String ASSUMED =
            "Metering sizes are by flow with water at the outlet's rated pressure, in preferred numbers; which"
                    + " sizes exist is a choice of ours. Row CV is for a level boom at one height from tip to tip, the mean over eight row"
                    + " phases and the pressures at work.";

    static final String CAUTION =
            "Relieve the pressure before you open a line, and wear what the product's label asks for. Keep"
                    + " people out of the boom's swing, and look up for power lines before you unfold. The label, the machine's manual, local"
                    + " codes and a licensed person's judgement stand above anything said here.";

    /** With the sizes where they fit; they stand below in any case. */
    private List<String> table(Choice choice, Words words) {
        List<String> full = table(choice, words, true);
        boolean fits = full.stream().allMatch(line -> Paint.width(line) <= columns);
        return fits ? full : table(choice, words, false);
    }

    private List<String> table(Choice choice, Words words, boolean sizes) {
        TextTable table = new TextTable(
                paint,
                2,
                "#",
                "outlet",
                "sets",
                sizes ? "sizes " + units.flowUnit() : "sizes",
                units.pressureUnit(),
                "heights " + units.lengthUnit(),
                "even",
                "CV",
                "leaf",
                "cost",
                "score");
        int rank = 1;
        for (Choice.Ranked one : choice.ranked()) {
            Candidate candidate = one.candidate();
            Cover cover = candidate.cover();
            Evenness evenness = candidate.evenness();
            table.row(
                    Integer.toString(rank++),
                    candidate.type().id(),
                    cover == null ? paint.bad("none") : Integer.toString(cover.sets()),
                    cover == null
                            ? "-"
                            : sizes
                                    ? words.sizes(cover)
                                    : Integer.toString(cover.steps().size()),
                    cover == null
                            ? "-"
                            : Words.span(
                                    units.pressureNumber(cover.pressuresPa().low()),
                                    units.pressureNumber(cover.pressuresPa().high())),
                    evenness == null ? "-" : words.heightNumbers(evenness.window()),
                    evenness == null ? "-" : judged(evenness.withinShare()),
                    evenness == null ? "-" : percent(evenness.expectedCv()),
                    words.contactTimes(candidate) + (candidate.contact() == null ? "" : "×"),
                    words.costCell(candidate.cost()),
                    one.score() == null ? "-" : FixedDecimals.text(one.score(), 2));
        }
        return table.lines();
    }

    private String judged(double share) {
        String text = Units.percent(share);
        return share >= 0.95 ? paint.good(text) : share < 0.8 ? paint.high(text) : text;
    }

    private static String percent(@Nullable Double ratio) {
        return ratio == null ? "-" : Units.percent(ratio);
    }

    private void reasons(List<String> lines, int rank, Choice.Ranked one, Words words) {
        lines.add(rank + "  " + paint.strong(one.candidate().type().title()));
        for (Words.Reason reason : words.reasons(one)) {
            String sign = switch (reason.mark()) {
                case FOR -> paint.good(reason.mark().sign());
                case EVEN -> paint.faint(reason.mark().sign());
                case AGAINST -> paint.high(reason.mark().sign());
            };
            wrap(lines, "   " + sign + " ", reason.text());
        }
    }

    private void reach(List<String> lines, CoverGroup group, Words words) {
        wrap(
                lines,
                "",
                paint.strong(group.names()) + ": " + words.sets(group.first(), group.cover()) + ", sizes "
                        + words.sizes(group.cover()) + " " + units.flowUnit() + " at "
                        + units.pressure(group.first().type().ratedPressurePa()) + " with water");
        wrap(lines, "  ", words.alone(group.first()));
        for (int i = 0; i < group.cover().changeovers().size(); i++) {
            wrap(lines, "  ", words.changeover(group.cover(), i));
        }
        TextTable table = new TextTable(
                paint,
                0,
                "rate " + units.rateUnit(),
                units.speedUnit(),
                "outlet " + units.flowUnit(),
                "boom",
                "size",
                units.pressureUnit());
        for (Corner corner : group.first().corners()) {
            table.row(
                    units.rateNumber(corner.rateM()),
                    units.speedNumber(corner.speedMps()),
                    units.flowNumber(corner.outletM3ps()),
                    units.boomFlow(corner.boomM3ps()),
                    corner.step() == null ? "-" : units.flowNumber(corner.step().sizeM3ps()),
                    corner.pressurePa() == null ? "-" : units.pressureNumber(corner.pressurePa()));
        }
        lines.addAll(table.lines());
        lines.add("");
    }

    private void faint(List<String> lines, String text) {
        List<String> wrapped = new ArrayList<>();
        wrap(wrapped, "", text);
        wrapped.forEach(line -> lines.add(paint.faint(line)));
    }

    /** Breaks between words, never between a number and its unit; lines after the first stand as far in as the text of the first. */
    private void wrap(List<String> lines, String before, String text) {
        int inset = Paint.width(before);
        StringBuilder line = new StringBuilder(before);
        int width = inset;
        for (String glued : UNIT_AHEAD.matcher(text).replaceAll(GLUE).split(" ", -1)) {
            String word = glued.replace(GLUE, " ");
            int more = Paint.width(word);
            if (width > inset && width + 1 + more > columns) {
                lines.add(line.toString());
                line = new StringBuilder(" ".repeat(inset));
                width = inset;
            }
            if (width > inset) {
                line.append(' ');
                width++;
            }
            line.append(word);
            width += more;
        }
        lines.add(line.toString());
    }
}
