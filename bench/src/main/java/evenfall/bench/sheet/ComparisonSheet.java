package evenfall.bench.sheet;

import static j2html.TagCreator.h3;
import static j2html.TagCreator.p;

import evenfall.bench.page.Axis;
import evenfall.bench.page.DataTable;
import evenfall.bench.page.Ink;
import evenfall.bench.page.LineChart;
import evenfall.bench.page.Page;
import evenfall.bench.page.Picture;
import evenfall.bench.page.Point;
import evenfall.bench.page.ScaleKey;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.Course;
import evenfall.bench.score.ScoredAlert;
import evenfall.quantity.Units;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The same ground with several outlet types. */
public final class ComparisonSheet implements Sheet {
    private static final double PLOT = 220;

    /** Row CV beyond this needs no telling apart, %. */
    private static final double MOST_CV_PCT = 60;

    private final List<RunRecord> runs;
    private final Units units;
    private final Extent extent;

    /**
     * @param runs at least one, of one scenario and seed, each with its own outlets
     */
    public ComparisonSheet(List<RunRecord> runs, Units units) {
        this.runs = List.copyOf(runs);
        this.units = units;
        this.extent = Extent.of(runs);
        if (runs.isEmpty()) {
            throw new IllegalArgumentException("nothing to compare");
        }
    }

    @Override
    public String html() {
        RunRecord first = runs.get(0);
        Page page = new Page(
                        first.title() + ": outlet types on the same ground",
                        List.of(INVENTED + " Scenario " + first.scenario() + ", seed " + first.seed() + ", "
                                + Words.distance(first.lengthM(), units) + ", target "
                                + units.rate(first.rig().target().rateM()) + " at "
                                + units.length(first.rig().target().heightM()) + "."))
                .lead(lead())
                .with(Page.block(table()))
                .section("Row CV along the pass", cv().chart());
        List<DomContent> maps = new ArrayList<>();
        maps.add(ScaleKey.svg());
        for (RunRecord run : runs) {
            Picture map = map(run);
            maps.add(Page.block(
                    h3(outlet(run) + ": " + withSign(run.below80Share()) + " of the ground below 80 %, "
                            + withSign(run.above120Share()) + " above 120 %"),
                    map == null ? p("No map: the run was too short.") : map.chart()));
        }
        return page.section("What each row got, true", maps.toArray(new DomContent[0]))
                .section("What this rests on", Page.note(Words.limits(first.rig(), units)), Page.note(Words.RESTS_ON))
                .caution(CAUTION)
                .html();
    }

    @Override
    public List<Picture> pictures() {
        List<Picture> pictures = new ArrayList<>();
        pictures.add(cv());
        for (RunRecord run : runs) {
            RunSheet.addKnown(pictures, map(run));
        }
        pictures.add(new Picture("map-key", ScaleKey.svg()));
        return pictures;
    }

    private static String outlet(RunRecord run) {
        return run.rig().outlet().id();
    }

    private String lead() {
        RunRecord best = null;
        double least = Double.POSITIVE_INFINITY;
        for (RunRecord run : runs) {
            Double cv = run.truth().rowCvMean();
            if (cv != null && cv < least) {
                least = cv;
                best = run;
            }
        }
        return best == null
                ? "Nothing fell in any of the runs."
                : "Most even here: " + outlet(best) + ", row CV " + Units.percentNumber(least, 1) + " % on average.";
    }

    private DomContent table() {
        DataTable table = new DataTable(
                1,
                "outlet",
                "row CV, mean %",
                "95th percentile %",
                "reported, mean %",
                "ground below 80 %",
                "above 120 %",
                "rate error, 95th percentile %",
                "alerts in time",
                "missed",
                "false");
        for (RunRecord run : runs) {
            table.row(
                    outlet(run),
                    Words.percent(run.truth().rowCvMean()),
                    Words.percent(run.truth().rowCvP95()),
                    Words.percent(run.reported().rowCvMean()),
                    withSign(run.below80Share()),
                    withSign(run.above120Share()),
                    Words.number(run.truth().rateErrorP95AbsPct()),
                    count(run, ScoredAlert.Verdict.RIGHT),
                    count(run, ScoredAlert.Verdict.MISSED),
                    count(run, ScoredAlert.Verdict.FALSE));
        }
        return Page.wide(table.html());
    }

    private static String withSign(@Nullable Double ratio) {
        return Words.percent(ratio) + (ratio == null ? "" : " %");
    }

    private static String count(RunRecord run, ScoredAlert.Verdict verdict) {
        return Long.toString(
                run.alerts().stream().filter(a -> a.verdict() == verdict).count());
    }

    private Picture cv() {
        double mostPct = 20;
        for (RunRecord run : runs) {
            for (Course.Moment moment : run.course().moments()) {
                mostPct = Math.max(mostPct, moment.rowCv() == null ? 0 : 100 * moment.rowCv());
            }
        }
        LineChart chart = new LineChart(
                "row-cv",
                "True row CV along the pass, one line for each outlet type",
                extent.distance(units),
                Axis.around(
                        mostPct > MOST_CV_PCT ? "row CV, %, cut at " + (int) MOST_CV_PCT : "row CV, %",
                        0,
                        Math.min(MOST_CV_PCT, mostPct)),
                PLOT);
        double limit = runs.get(0).rig().limits().rowCv();
        chart.limit("limit " + Units.percent(limit), 100 * limit);
        for (int i = 0; i < runs.size(); i++) {
            List<Point> points = new ArrayList<>();
            for (Course.Moment moment : runs.get(i).course().moments()) {
                points.add(new Point(moment.atM() * Words.distancesPerMetre(units), percent(moment.rowCv())));
            }
            chart.line(outlet(runs.get(i)), Ink.number(i), Way.thinned(points));
        }
        return new Picture("row-cv", chart.svg());
    }

    private static @Nullable Double percent(@Nullable Double ratio) {
        return ratio == null ? null : 100 * ratio;
    }

    private @Nullable Picture map(RunRecord run) {
        return RunCharts.groundMap(
                run.ground(),
                "map-" + outlet(run).replaceAll("[^a-zA-Z0-9-]", "-"),
                "What each row got along the pass with " + outlet(run) + " outlets, in truth",
                extent,
                units,
                false,
                new Sprayed(run.ground())::share);
    }
}
