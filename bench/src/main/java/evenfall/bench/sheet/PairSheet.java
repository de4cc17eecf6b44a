package evenfall.bench.sheet;

import static j2html.TagCreator.div;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.p;

import evenfall.bench.page.DataTable;
import evenfall.bench.page.Page;
import evenfall.bench.page.Picture;
import evenfall.bench.page.ScaleKey;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.ScoredAlert;
import evenfall.quantity.Units;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Two runs of the same ground beside each other, on the same axes. */
public final class PairSheet implements Sheet {
    private final RunRecord before;
    private final RunRecord after;
    private final Units units;
    private final RunCharts left;
    private final RunCharts right;

    public PairSheet(RunRecord before, RunRecord after, Units units) {
        this.before = before;
        this.after = after;
        this.units = units;
        Extent extent = Extent.of(List.of(before, after));
        left = new RunCharts(before, units, extent, "before-", true);
        right = new RunCharts(after, units, extent, "after-", true);
    }

    @Override
    public String html() {
        Page page = new Page(
                        title(),
                        List.of(INVENTED, "Before: " + Words.what(before, units), "After: " + Words.what(after, units)))
                .lead(lead());
        if (!before.scenario().equals(after.scenario()) || before.seed() != after.seed()) {
            page.with(div(p("Not the same ground: scenario or seed differ, so part of what differs is luck."))
                    .withClass("unknown"));
        }
        page.with(Page.block(figures()));
        page.section("What each row got", Page.block(ScaleKey.svg(), pair(RunCharts::trueMap)), rowsOff());
        List<DomContent> heights = new ArrayList<>();
        for (RunCharts.Place place : RunCharts.Place.values()) {
            heights.add(Page.block(h3(RunSheet.capital(place.words())), pair(charts -> charts.height(place))));
        }
        page.section("Boom heights over distance", heights.toArray(new DomContent[0]));
        page.section("Rate error over distance", Page.block(pair(RunCharts::rate)));
        page.section("Alerts on the time line", Page.block(pair(RunCharts::alerts)));
        page.section("Not known to the monitor", sides(RunSheet.unknown(before), RunSheet.unknown(after)));
        page.section("What this rests on", rests());
        return page.caution(CAUTION).html();
    }

    private DomContent[] rests() {
        String limitsBefore = Words.limits(before.rig(), units);
        String limitsAfter = Words.limits(after.rig(), units);
        return limitsBefore.equals(limitsAfter)
                ? new DomContent[] {Page.note(limitsAfter), Page.note(Words.RESTS_ON)}
                : new DomContent[] {
                    Page.note("Before. " + limitsBefore), Page.note("After. " + limitsAfter), Page.note(Words.RESTS_ON)
                };
    }

    private DomContent rowsOff() {
        return Page.block(h3("Rows off the mean"), pair(RunCharts::rowsOff));
    }

    @Override
    public List<Picture> pictures() {
        List<Picture> pictures = new ArrayList<>();
        for (RunCharts charts : List.of(left, right)) {
            for (RunCharts.Place place : RunCharts.Place.values()) {
                pictures.add(charts.height(place));
            }
            RunSheet.addKnown(pictures, charts.trueMap());
            pictures.add(charts.rowsOff());
            pictures.add(charts.rate());
            RunSheet.addKnown(pictures, charts.alerts());
        }
        pictures.add(new Picture("map-key", ScaleKey.svg()));
        return pictures;
    }

    private String title() {
        return before.title().equals(after.title())
                ? before.title() + ": before and after"
                : before.title() + " and " + after.title();
    }

    private String lead() {
        Double was = before.truth().rowCvMean();
        Double is = after.truth().rowCvMean();
        if (was == null || is == null) {
            return "Rows cannot be compared: in one of the runs nothing fell.";
        }
        String from = Units.percentNumber(was, 1);
        String to = Units.percentNumber(is, 1);
        return from.equals(to)
                ? "Row CV " + to + " % in both."
                : "Row CV " + from + " % before, " + to + " % after: rows are " + (is < was ? "more even" : "less even")
                        + ".";
    }

    private DomContent figures() {
        DataTable table = new DataTable(1, "true", "before", "after", "change");
        row(table, "row CV, mean %", run -> percent(run.truth().rowCvMean()));
        row(table, "row CV, 95th percentile %", run -> percent(run.truth().rowCvP95()));
        row(table, "rate error, mean %", run -> run.truth().rateErrorMeanPct());
        row(
                table,
                "rate error, 95th percentile of its size %",
                run -> run.truth().rateErrorP95AbsPct());
        row(table, "ground that got less than 80 % of its stretch, %", run -> percent(run.below80Share()));
        row(table, "ground that got more than 120 %, %", run -> percent(run.above120Share()));
        count(table, "alerts in time", ScoredAlert.Verdict.RIGHT);
        count(table, "alerts missed", ScoredAlert.Verdict.MISSED);
        count(table, "alerts without a cause", ScoredAlert.Verdict.FALSE);
        return table.html();
    }

    private static @Nullable Double percent(@Nullable Double ratio) {
        return ratio == null ? null : 100 * ratio;
    }

    private void row(DataTable table, String name, Function<RunRecord, @Nullable Double> of) {
        Double was = of.apply(before);
        Double is = of.apply(after);
        table.row(
                name,
                Words.number(was),
                Words.number(is),
                was == null || is == null ? Words.NOT_KNOWN : Units.signed(is - was, 1));
    }

    private void count(DataTable table, String name, ScoredAlert.Verdict verdict) {
        int was = count(before, verdict);
        int is = count(after, verdict);
        table.row(name, Integer.toString(was), Integer.toString(is), Units.signed(is - was, 0));
    }

    private static int count(RunRecord run, ScoredAlert.Verdict verdict) {
        return (int) run.alerts().stream().filter(a -> a.verdict() == verdict).count();
    }

    private DomContent pair(Function<RunCharts, @Nullable Picture> of) {
        return sides(side(of.apply(left)), side(of.apply(right)));
    }

    private static DomContent side(@Nullable Picture picture) {
        return picture == null ? p("Nothing to show.") : picture.chart();
    }

    private static DomContent sides(DomContent left, DomContent right) {
        return div(div(p("before").withClass("side"), left), div(p("after").withClass("side"), right))
                .withClass("pair");
    }
}
