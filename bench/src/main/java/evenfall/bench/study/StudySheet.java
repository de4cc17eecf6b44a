package evenfall.bench.study;

import static j2html.TagCreator.h3;
import static j2html.TagCreator.p;

import evenfall.bench.page.Axis;
import evenfall.bench.page.DataTable;
import evenfall.bench.page.Ink;
import evenfall.bench.page.LineChart;
import evenfall.bench.page.Page;
import evenfall.bench.page.Picture;
import evenfall.bench.page.Point;
import evenfall.bench.sheet.Sheet;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.TradeUnits;
import evenfall.quantity.Units;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A study on a page: which outlet type for which ground and speed. */
public final class StudySheet implements Sheet {
    /** As in the study's rig, a ratio. */
    static final double LIMIT_CV = 0.15;

    private static final double PLOT = 210;

    /** Row CV beyond this needs no telling apart, %. */
    private static final double MOST_CV_PCT = 80;

    private final Grid grid;
    private final Map<Case, Outcome> outcomes;
    private final List<Findings.Answer> answers;
    private final Units units;

    public StudySheet(Grid grid, Map<Case, Outcome> outcomes, Units units) {
        this.grid = grid;
        this.outcomes = outcomes;
        this.answers = Findings.of(grid, outcomes);
        this.units = units;
    }

    @Override
    public String html() {
        int wanted = grid.cases().size();
        Page page = new Page("Which outlets for which ground and speed", List.of(what())).lead(lead());
        if (outcomes.size() < wanted) {
            page.with(p(outcomes.size() + " of " + wanted + " runs are there; the rest is not known yet.")
                    .withClass("unknown"));
        }
        page.with(Page.block(Page.wide(table()), Page.note(tableNote())));
        for (String ground : grid.grounds()) {
            List<DomContent> parts = new ArrayList<>();
            if (grid.speedsKmh().size() > 1) {
                parts.add(Page.block(
                        h3("By speed, each type at the height that suits it best"),
                        bySpeed(ground).chart()));
            }
            if (grid.heightsM().size() > 1) {
                parts.add(Page.block(
                        h3("By height, the mean over the speeds"),
                        byHeight(ground).chart()));
            }
            if (!parts.isEmpty()) {
                page.section("Ground " + named(ground), parts.toArray(new DomContent[0]));
            }
        }
        return page.section("What this rests on", Page.note(RESTS_ON), Page.note(machine()))
                .caution(CAUTION)
                .html();
    }

    @Override
    public List<Picture> pictures() {
        List<Picture> pictures = new ArrayList<>();
        for (String ground : grid.grounds()) {
            if (grid.speedsKmh().size() > 1) {
                pictures.add(bySpeed(ground));
            }
            if (grid.heightsM().size() > 1) {
                pictures.add(byHeight(ground));
            }
        }
        return pictures;
    }

    private static final String RESTS_ON =
            "The measure is the true row CV that 95 % of the pass keeps, its mean over the seeds. Types are told apart by Student's t test"
                    + " of the differences seed by seed, at 95 %. Ground has the roughness of its class of ISO 8608 and no terraces, ruts"
                    + " or turns; drag on the streams is in it, wind is not. What evenness costs, how leaves burn and how outlets plug is"
                    + " another question: see evenfall choose.";

    private String machine() {
        return "Invented machine: self-propelled, " + (units == Units.US ? "118 ft" : "36 m")
                + " boom with a height control that lags, outlets every "
                + units.spacing(0.5) + ", rows every " + units.spacing(0.15)
                + ", UAN 28 %. At each speed it is fitted with the metering size that gives the target rate at the type's rated pressure. The"
                + " limit of row CV is "
                + Units.percent(LIMIT_CV) + ".";
    }

    private String what() {
        return INVENTED + " " + outcomes.size() + " runs of " + FixedDecimals.text(grid.seconds(), 0) + " s, "
                + grid.seeds().size() + (grid.seeds().size() == 1 ? " seed" : " seeds") + " each, target "
                + units.rate(grid.rateLpha() * TradeUnits.LPHA_M) + ".";
    }

    private static String named(String ground) {
        return ground.equals("level") ? "level" : "of class " + ground;
    }

    private String speed(double kmh) {
        return units.speed(kmh * TradeUnits.KMPH_MPS);
    }

    private String lead() {
        List<String> said = new ArrayList<>();
        for (String ground : grid.grounds()) {
            String winners = answers.stream()
                    .filter(answer -> answer.ground().equals(ground)
                            && !answer.standings().isEmpty())
                    .map(answer -> answer.standings().get(0).outlet())
                    .distinct()
                    .collect(Collectors.joining(" or "));
            if (!winners.isEmpty()) {
                said.add(winners + " on " + (ground.equals("level") ? "level ground" : ground));
            }
        }
        return said.isEmpty() ? "No run is there yet." : "Most even: " + String.join(", ", said) + ".";
    }

    private DomContent table() {
        List<String> head = new ArrayList<>(List.of("ground", "speed"));
        head.addAll(grid.outlets());
        DataTable table = new DataTable(2, head.toArray(new String[0]));
        for (Findings.Answer answer : answers) {
            List<String> cells = new ArrayList<>(List.of(answer.ground(), speed(answer.speedKmh())));
            for (String outlet : grid.outlets()) {
                cells.add(answer.standings().stream()
                        .filter(one -> one.outlet().equals(outlet))
                        .findFirst()
                        .map(one -> told(one, one.equals(answer.standings().get(0))))
                        .orElse("not known yet"));
            }
            table.row(cells.toArray(new String[0]));
        }
        return table.html();
    }

    private String told(Findings.Standing standing, boolean best) {
        String mark = best ? "● " : Boolean.TRUE.equals(standing.like()) ? "○ " : "";
        return mark + (standing.cvP95() > LIMIT_CV ? "✕ " : "") + Units.percentNumber(standing.cvP95(), 1) + " %"
                + (grid.heightsM().size() > 1 ? " at " + units.length(standing.heightM()) : "");
    }

    private String tableNote() {
        return "Percent: the row CV that 95 % of the pass keeps, at the height that suits the type best"
                + (grid.heightsM().size() > 1 ? ", which stands beside it" : "") + ". ● most even. "
                + (grid.seeds().size() > 1
                        ? "○ not told apart from it by these seeds. "
                        : "With one seed nothing can be told apart from luck. ")
                + "✕ beyond the limit of " + Units.percent(LIMIT_CV) + ".";
    }

    private Picture bySpeed(String ground) {
        double per = TradeUnits.KMPH_MPS * units.speedsPerMps();
        Axis across = axis("speed, " + units.speedUnit(), grid.speedsKmh(), per);
        LineChart chart = new LineChart(
                "speed-" + ground, "Row CV against speed on ground " + named(ground), across, cvAxis(), PLOT);
        chart.limit("limit " + Units.percent(LIMIT_CV), 100 * LIMIT_CV);
        for (int i = 0; i < grid.outlets().size(); i++) {
            String outlet = grid.outlets().get(i);
            List<Point> points = new ArrayList<>();
            for (double speed : sorted(grid.speedsKmh())) {
                points.add(new Point(speed * per, percentOf(best(ground, speed, outlet))));
            }
            chart.line(outlet, Ink.number(i), points);
        }
        return new Picture("speed-" + ground, chart.svg());
    }

    private @Nullable Double best(String ground, double speedKmh, String outlet) {
        for (Findings.Answer answer : answers) {
            if (answer.ground().equals(ground) && answer.speedKmh() == speedKmh) {
                for (Findings.Standing standing : answer.standings()) {
                    if (standing.outlet().equals(outlet)) {
                        return standing.cvP95();
                    }
                }
            }
        }
        return null;
    }

    private Picture byHeight(String ground) {
        double per = units.lengthsPerMetre();
        Axis across = axis("target height, " + units.lengthUnit(), grid.heightsM(), per);
        LineChart chart = new LineChart(
                "height-" + ground, "Row CV against height on ground " + named(ground), across, cvAxis(), PLOT);
        chart.limit("limit " + Units.percent(LIMIT_CV), 100 * LIMIT_CV);
        for (int i = 0; i < grid.outlets().size(); i++) {
            String outlet = grid.outlets().get(i);
            List<Point> points = new ArrayList<>();
            for (double height : sorted(grid.heightsM())) {
                points.add(new Point(height * per, percentOf(meanOverSpeeds(ground, outlet, height))));
            }
            chart.line(outlet, Ink.number(i), points);
        }
        return new Picture("height-" + ground, chart.svg());
    }

    /** Null where a speed is missing: a mean over other speeds than its neighbours' would mislead. */
    private @Nullable Double meanOverSpeeds(String ground, String outlet, double heightM) {
        double sum = 0;
        for (double speed : grid.speedsKmh()) {
            Findings.Standing one = Findings.at(grid, outcomes, ground, speed, outlet, heightM);
            if (one == null) {
                return null;
            }
            sum += one.cvP95();
        }
        return sum / grid.speedsKmh().size();
    }

    private static @Nullable Double percentOf(@Nullable Double ratio) {
        return ratio == null ? null : 100 * ratio;
    }

    private static List<Double> sorted(List<Double> values) {
        return values.stream().sorted().toList();
    }

    private static Axis axis(String label, List<Double> values, double per) {
        double low = sorted(values).get(0) * per;
        double high = sorted(values).get(values.size() - 1) * per;
        return Axis.around(label, low, high);
    }

    /** The same for all charts of the page, so that grounds can be compared. */
    private Axis cvAxis() {
        double mostPct = 100 * LIMIT_CV;
        for (String ground : grid.grounds()) {
            for (String outlet : grid.outlets()) {
                for (double speed : grid.speedsKmh()) {
                    for (double height : grid.heightsM()) {
                        Findings.Standing one = Findings.at(grid, outcomes, ground, speed, outlet, height);
                        mostPct = Math.max(mostPct, one == null ? 0 : 100 * one.cvP95());
                    }
                }
            }
        }
        return Axis.around("row CV that 95 % keeps, %", 0, Math.min(MOST_CV_PCT, mostPct));
    }
}
