package evenfall.bench.sheet;

import static j2html.TagCreator.b;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.li;
import static j2html.TagCreator.p;
import static j2html.TagCreator.text;
import static j2html.TagCreator.ul;

import evenfall.bench.page.DataTable;
import evenfall.bench.page.Page;
import evenfall.bench.page.Picture;
import evenfall.bench.page.ScaleKey;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.ScoredAlert;
import evenfall.quantity.Units;
import j2html.tags.DomContent;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One run on a page. */
public final class RunSheet implements Sheet {
    private static final int MOST_ALERTS = 24;
    private static final int MOST_TOLD = 4;

    private final RunRecord run;
    private final Units units;
    private final RunCharts charts;

    public RunSheet(RunRecord run, Units units) {
        this.run = run;
        this.units = units;
        this.charts = new RunCharts(run, units, Extent.of(List.of(run)), "", false);
    }

    @Override
    public String html() {
        Page page = new Page(run.title(), List.of(INVENTED + " " + Words.what(run, units)))
                .lead(Words.lead(run))
                .with(Page.block(figures()));
        page.section("Alerts on the time line", alerts());
        List<DomContent> heights = new ArrayList<>();
        for (RunCharts.Place place : RunCharts.Place.values()) {
            heights.add(
                    Page.block(h3(capital(place.words())), charts.height(place).chart()));
        }
        heights.add(Page.note(
                "True: the outermost outlet of a wing, and the mean between the hinges. Reported: the sensor nearest to"
                        + " it, which sits some way in from the tip."));
        page.section("Boom heights over distance", heights.toArray(new DomContent[0]));
        page.section("What each row got", maps());
        page.section("Rate error over distance", charts.rate().chart());
        page.section("Not known to the monitor", unknown(run));
        page.section("What this rests on", Page.note(Words.limits(run.rig(), units)), Page.note(Words.RESTS_ON));
        for (String remark : run.remarks()) {
            page.with(p("Note: " + remark));
        }
        return page.caution(CAUTION).html();
    }

    @Override
    public List<Picture> pictures() {
        List<Picture> pictures = new ArrayList<>();
        for (RunCharts.Place place : RunCharts.Place.values()) {
            pictures.add(charts.height(place));
        }
        addKnown(pictures, charts.trueMap());
        addKnown(pictures, charts.reportedMap());
        pictures.add(new Picture("map-key", ScaleKey.svg()));
        pictures.add(charts.rowsOff());
        pictures.add(charts.rate());
        addKnown(pictures, charts.alerts());
        return pictures;
    }

    static void addKnown(List<Picture> to, @Nullable Picture picture) {
        if (picture != null) {
            to.add(picture);
        }
    }

    private DomContent figures() {
        return new DataTable(1, "", "true", "reported", "limit")
                .row(
                        "row CV, mean %",
                        Words.percent(run.truth().rowCvMean()),
                        Words.percent(run.reported().rowCvMean()),
                        Units.percentNumber(run.rig().limits().rowCv(), 0))
                .row(
                        "row CV, 95th percentile %",
                        Words.percent(run.truth().rowCvP95()),
                        Words.percent(run.reported().rowCvP95()),
                        "")
                .row(
                        "rate error, mean %",
                        Words.signed(run.truth().rateErrorMeanPct()),
                        Words.signed(run.reported().rateErrorMeanPct()),
                        "")
                .row(
                        "rate error, 95th percentile of its size %",
                        Words.number(run.truth().rateErrorP95AbsPct()),
                        Words.number(run.reported().rateErrorP95AbsPct()),
                        "±" + Units.percentNumber(run.rig().limits().rateError(), 0))
                .row("ground that got less than 80 % of its stretch, %", Words.percent(run.below80Share()), "-", "")
                .row("ground that got more than 120 %, %", Words.percent(run.above120Share()), "-", "")
                .html();
    }

    private DomContent[] alerts() {
        Picture picture = charts.alerts();
        if (picture == null) {
            return new DomContent[] {p("No alert was due, and none was raised.")};
        }
        List<DomContent> parts = new ArrayList<>();
        parts.add(Page.block(
                picture.chart(),
                Page.note(
                        "A bar: the alert stands. A diamond: by the truth it was due. True: due and in time. False: raised"
                                + " without a cause. Near miss: the limit was touched, not passed for long enough. Without a time of clearing"
                                + " it stood to the end.")));
        DataTable table = new DataTable(2, "alert", "", "due s", "raised s", "cleared s");
        int shown = 0;
        for (ScoredAlert alert : run.alerts()) {
            if (shown++ == MOST_ALERTS) {
                break;
            }
            table.row(
                    alert.kind() + " " + alert.place(),
                    Words.verdict(alert.verdict()),
                    Words.seconds(alert.dueS()),
                    Words.seconds(alert.raisedS()),
                    Words.seconds(alert.clearedS()));
        }
        parts.add(table.html());
        if (run.alerts().size() > MOST_ALERTS) {
            parts.add(
                    Page.note("The first " + MOST_ALERTS + " of " + run.alerts().size() + "."));
        }
        parts.add(told());
        return parts.toArray(new DomContent[0]);
    }

    /** What the driver read, once for each kind and place. */
    private DomContent told() {
        List<DomContent> items = new ArrayList<>();
        Set<String> told = new LinkedHashSet<>();
        for (ScoredAlert alert : run.alerts()) {
            ReportedAlert said = alert.raised();
            if (said != null && told.size() < MOST_TOLD && told.add(said.kind() + " " + said.place())) {
                items.add(li(
                        text("At " + Words.seconds(said.raisedS()) + " s the driver read: " + said.why() + " "),
                        b(said.act())));
            }
        }
        return ul(each(items.stream()));
    }

    private DomContent[] maps() {
        Picture truth = charts.trueMap();
        Picture reported = charts.reportedMap();
        if (truth == null || reported == null) {
            return new DomContent[] {
                p("No map: the run was too short to cover ground, which takes a stretch of 4 m before and after it.")
            };
        }
        return new DomContent[] {
            Page.block(ScaleKey.svg(), h3("True"), truth.chart()),
            Page.block(h3("As reported"), reported.chart()),
            Page.block(
                    h3("Rows off the mean, true"),
                    charts.rowsOff().chart(),
                    Page.note("Interrupted where most of the boom was off.")),
            Page.note(
                    "Both maps are over their own mean of the ground where most of the boom sprayed. The reported one is drawn from the heights, pressure and rate in"
                            + " the monitor's messages; hatched where they were not known, or where part of the boom was off, since messages do"
                            + " not say which part.")
        };
    }

    static DomContent unknown(RunRecord run) {
        List<String> lines = Words.unknown(run);
        return lines.isEmpty()
                ? p("Everything that it reports was known at every moment.")
                : ul(each(lines, line -> li(line)));
    }

    static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
