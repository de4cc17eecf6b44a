package evenfall.bench.choose;

import static j2html.TagCreator.b;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.text;
import static j2html.TagCreator.ul;

import evenfall.bench.page.Axis;
import evenfall.bench.page.DataTable;
import evenfall.bench.page.Ink;
import evenfall.bench.page.LineChart;
import evenfall.bench.page.Page;
import evenfall.bench.page.Point;
import evenfall.liquid.Orifice;
import evenfall.outlet.OutletCatalogue;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;

/** The answer of {@code choose} as a page for reading and printing. */
public final class ChoosePage {
    private static final double PLOT_HIGH = 240;
    private static final int CURVE_POINTS = 60;

    /** Row CV beyond this needs no telling apart, %. */
    private static final double HIGHEST_CV_PCT = 60;

    private final Choice choice;
    private final Job job;
    private final Units units;
    private final Words words;

    public ChoosePage(Choice choice, Units units) {
        this.choice = choice;
        this.job = choice.job();
        this.units = units;
        this.words = new Words(choice, units);
    }

    /** The whole file. */
    public String html() {
        return page().html();
    }

    /** What stands on the page, for one that brings the styles itself. */
    public String content() {
        return page().content();
    }

    private Page page() {
        Page page = new Page("Which outlets to fit", words.question())
                .lead(words.verdict())
                .with(Page.wide(ranking()), Page.note(scoreNote()))
                .section("Why", Page.columns(reasons()));
        if (choice.ranked().stream().anyMatch(one -> one.candidate().evenness() != null)) {
            page.section("What height does to the rows", heightChart(), heightNote());
        }
        List<CoverGroup> groups = CoverGroup.of(choice);
        for (int i = 0; i < groups.size(); i++) {
            page.section(
                    "What " + groups.get(i).names() + " reach"
                            + (groups.get(i).members().size() == 1 ? "es" : ""),
                    reach(groups.get(i), i));
        }
        return page.section("Leaf contact", leafTable(), p(LeafContact.CAVEAT), Page.note(words.factors()))
                .section("Handling", handling())
                .section("What this rests on", Page.note(ChooseText.ASSUMED))
                .caution(ChooseText.CAUTION);
    }

    private DomContent ranking() {
        DataTable table = new DataTable(
                1,
                "outlet",
                "sets",
                "sizes " + units.flowUnit(),
                "pressure " + units.pressureUnit(),
                "even at height " + units.lengthUnit(),
                "heights even",
                "row CV",
                "leaf contact",
                "cost",
                "score");
        int rank = 1;
        for (Choice.Ranked one : choice.ranked()) {
            Candidate candidate = one.candidate();
            Cover cover = candidate.cover();
            Evenness evenness = candidate.evenness();
            table.row(
                    rank + "  " + candidate.type().id(),
                    cover == null ? "none" : Integer.toString(cover.sets()),
                    cover == null ? "-" : words.sizes(cover),
                    cover == null
                            ? "-"
                            : Words.span(
                                    units.pressureNumber(cover.pressuresPa().low()),
                                    units.pressureNumber(cover.pressuresPa().high())),
                    evenness == null ? "-" : words.heightNumbers(evenness.window()),
                    evenness == null ? "-" : Units.percent(evenness.withinShare()),
                    evenness == null || evenness.expectedCv() == null ? "-" : Units.percent(evenness.expectedCv()),
                    words.contactTimes(candidate) + (candidate.contact() == null ? "" : "×"),
                    words.costCell(candidate.cost()),
                    one.score() == null ? "-" : FixedDecimals.text(one.score(), 2));
            if (rank == 1 && cover != null) {
                table.strong();
            }
            rank++;
        }
        return table.html();
    }

    private String scoreNote() {
        String leftOut = words.leftOut();
        return "Heights even: share of the heights the boom visits at which rows keep a CV of "
                + Units.percent(job.limitCv())
                + ". Row CV: what to expect while the height wanders. Leaf contact: times the least. Score: 1 is the best of all in"
                + " every respect. " + words.weights() + (leftOut == null ? "" : " " + leftOut);
    }

    private DomContent[] reasons() {
        List<DomContent> blocks = new ArrayList<>();
        int rank = 1;
        for (Choice.Ranked one : choice.ranked()) {
            blocks.add(Page.block(
                    h3(rank++ + "  " + one.candidate().type().title()),
                    ul(each(
                                    words.reasons(one),
                                    reason -> li(
                                            b(
                                                    reason.mark().sign().equals("-")
                                                            ? "−"
                                                            : reason.mark().sign()),
                                            text(reason.text()))))
                            .withClass("reasons")));
        }
        return blocks.toArray(new DomContent[0]);
    }

    private DomContent heightChart() {
        double perMetre = units.lengthsPerMetre();
        double most = 0;
        double farM = 0;
        for (Choice.Ranked one : choice.ranked()) {
            Evenness evenness = one.candidate().evenness();
            for (Evenness.AtHeight at : evenness == null ? List.<Evenness.AtHeight>of() : evenness.curve()) {
                most = Math.max(most, at.rowCv() == null ? 0 : 100 * at.rowCv());
                farM = Math.max(farM, at.heightM());
            }
        }
        LineChart chart = new LineChart(
                "height",
                "Row CV against the height of the outlets, one line for each outlet type",
                Axis.of("height of the outlets over the ground, " + units.lengthUnit(), 0, farM * perMetre),
                Axis.around("row CV, %", 0, Math.min(HIGHEST_CV_PCT, most)),
                PLOT_HIGH);
        double metres = job.wander().metres();
        if (metres > 0) {
            boolean within = job.wander().kind() == Wander.Kind.WITHIN;
            chart.strip(
                    within ? "the boom is here" : "here two thirds of the time",
                    (job.heightM() - metres) * perMetre,
                    (job.heightM() + metres) * perMetre);
        }
        chart.limit("limit " + Units.percent(job.limitCv()), 100 * job.limitCv());
        for (Choice.Ranked one : choice.ranked()) {
            Evenness evenness = one.candidate().evenness();
            if (evenness == null) {
                continue;
            }
            List<Point> points = new ArrayList<>();
            for (Evenness.AtHeight at : evenness.curve()) {
                points.add(new Point(at.heightM() * perMetre, at.rowCv() == null ? null : 100 * at.rowCv()));
            }
            chart.line(one.candidate().type().id(), inkOf(one.candidate().type().id()), points);
        }
        return chart.svg();
    }

    /** A type keeps its ink whatever its rank. */
    private Ink inkOf(String outlet) {
        List<String> ids = new ArrayList<>(OutletCatalogue.ids());
        choice.ranked().stream()
                .map(one -> one.candidate().type().id())
                .filter(id -> !ids.contains(id))
                .sorted()
                .forEach(ids::add);
        return Ink.number(ids.indexOf(outlet));
    }

    private DomContent heightNote() {
        return Page.note(
                "At the middle of the pressures at work, on a level boom at one height from tip to tip, mean over eight row"
                        + " phases. On rough ground the two wings stand at different heights, and wind moves streams; neither is in this picture.");
    }

    private DomContent[] reach(CoverGroup group, int number) {
        List<DomContent> parts = new ArrayList<>();
        parts.add(reachChart(group, number));
        List<DomContent> changes = new ArrayList<>();
        for (int i = 0; i < group.cover().changeovers().size(); i++) {
            changes.add(li(words.changeover(group.cover(), i)));
        }
        if (!changes.isEmpty()) {
            parts.add(h3("Where one size ends"));
            parts.add(ul(each(changes.stream())));
        }
        DataTable table = new DataTable(
                0,
                "rate " + units.rateUnit(),
                "speed " + units.speedUnit(),
                "one outlet " + units.flowUnit(),
                "whole boom",
                "size " + units.flowUnit(),
                "pressure " + units.pressureUnit());
        for (Corner corner : group.first().corners()) {
            table.row(
                    units.rateNumber(corner.rateM()),
                    units.speedNumber(corner.speedMps()),
                    units.flowNumber(corner.outletM3ps()),
                    units.boomFlow(corner.boomM3ps()),
                    corner.step() == null ? "-" : units.flowNumber(corner.step().sizeM3ps()),
                    corner.pressurePa() == null ? "-" : units.pressureNumber(corner.pressurePa()));
        }
        parts.add(h3("At the corners of the range"));
        parts.add(Page.wide(table.html()));
        parts.add(h3("What each size reaches alone"));
        parts.add(Page.wide(alone(group.first())));
        return parts.toArray(new DomContent[0]);
    }

    private DomContent alone(Candidate candidate) {
        double slow = job.speedsMps().low();
        double fast = job.speedsMps().high();
        DataTable table = new DataTable(
                0,
                "size " + units.flowUnit(),
                "of the range",
                "rates at " + units.speed(slow) + ", " + units.rateUnit(),
                "rates at " + units.speed(fast) + ", " + units.rateUnit());
        for (Reach reach : words.worthSaying(candidate)) {
            table.row(
                    units.flowNumber(reach.sizeM3ps()),
                    Words.share(reach.share()),
                    ratesAt(reach, slow),
                    ratesAt(reach, fast));
        }
        return table.html();
    }

    private String ratesAt(Reach reach, double speedMps) {
        double perFlow = 1 / (speedMps * job.spacingM());
        return Words.span(
                units.rateNumber(reach.flowsM3ps().low() * perFlow),
                units.rateNumber(reach.flowsM3ps().high() * perFlow));
    }

    /** Rate against speed: what each size serves at which pressure, and the range that was asked for. */
    private DomContent reachChart(CoverGroup group, int number) {
        Axis across = Axis.around(
                "speed, " + units.speedUnit(),
                0.85 * job.speedsMps().low() * units.speedsPerMps(),
                1.1 * job.speedsMps().high() * units.speedsPerMps());
        Axis up =
                Axis.around("rate, " + units.rateUnit(), 0, 1.15 * job.ratesM().high() * units.ratesPerMetre());
        LineChart chart = new LineChart(
                "reach" + number,
                "Rates and speeds that each metering size reaches, with the pressure it takes",
                across,
                up,
                PLOT_HIGH);
        int ink = 0;
        for (Cover.Step step : group.cover().steps()) {
            String set = group.cover().sets() > 1 ? ", set " + step.set() : "";
            chart.area(
                    "size " + units.flow(step.sizeM3ps()) + set,
                    Ink.number(ink++),
                    rates(across, step.usedM3ps().low()),
                    rates(across, step.usedM3ps().high()));
        }
        for (Cover.Step step : group.cover().steps()) {
            Orifice orifice =
                    Orifice.ratedAt(step.sizeM3ps(), group.first().type().ratedPressurePa());
            for (double pressurePa : roundPressures(step.pressuresPa())) {
                chart.contour(
                        units.pressure(pressurePa), rates(across, orifice.flowM3ps(pressurePa, job.specificGravity())));
            }
        }
        chart.frame(
                "asked for",
                job.speedsMps().low() * units.speedsPerMps(),
                job.speedsMps().high() * units.speedsPerMps(),
                job.ratesM().low() * units.ratesPerMetre(),
                job.ratesM().high() * units.ratesPerMetre());
        for (Corner corner : group.first().corners()) {
            if (corner.pressurePa() != null) {
                chart.dot(
                        units.pressure(corner.pressurePa()),
                        corner.speedMps() * units.speedsPerMps(),
                        corner.rateM() * units.ratesPerMetre());
            }
        }
        return chart.svg();
    }

    /** A few round pressures well inside a step, to draw lines at, Pa. */
    private List<Double> roundPressures(Span pressuresPa) {
        double per = units.pressuresPerPascal();
        List<Double> list = new ArrayList<>();
        for (double round : units == Units.METRIC ? new double[] {100, 200, 300} : new double[] {15, 30, 45}) {
            if (round / per > 1.05 * pressuresPa.low() && round / per < 0.95 * pressuresPa.high()) {
                list.add(round / per);
            }
        }
        return list;
    }

    /** The rates that a flow through one outlet gives at each speed. */
    private List<Point> rates(Axis across, double flowM3ps) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i <= CURVE_POINTS; i++) {
            double speed = across.low() + (across.high() - across.low()) * i / CURVE_POINTS;
            double rateM = flowM3ps / (speed / units.speedsPerMps() * job.spacingM());
            points.add(new Point(speed, rateM * units.ratesPerMetre()));
        }
        return points;
    }

    private DomContent leafTable() {
        DataTable table = new DataTable(
                1, "outlet", "prints on a metre of boom, mm", "times the least", "at " + units.pressureUnit());
        for (Choice.Ranked one : choice.ranked()) {
            LeafContact contact = one.candidate().contact();
            table.row(
                    one.candidate().type().title(),
                    contact == null ? "not known" : FixedDecimals.text(1000 * contact.wettedMpM(), 0),
                    words.contactTimes(one.candidate()),
                    contact == null ? "-" : units.pressureNumber(contact.pressurePa()));
        }
        return Page.wide(table.html());
    }

    private DomContent handling() {
        List<DomContent> blocks = new ArrayList<>();
        for (boolean bar : new boolean[] {true, false}) {
            if (choice.ranked().stream().anyMatch(one -> one.candidate().bar() == bar)) {
                blocks.add(Page.block(h3(HandlingNotes.title(bar)), ul(each(HandlingNotes.of(bar), note -> li(note)))));
            }
        }
        return Page.columns(blocks.toArray(new DomContent[0]));
    }
}
