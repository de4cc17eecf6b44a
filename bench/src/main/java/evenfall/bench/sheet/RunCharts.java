package evenfall.bench.sheet;

import evenfall.bench.page.Axis;
import evenfall.bench.page.Ink;
import evenfall.bench.page.LaneChart;
import evenfall.bench.page.LineChart;
import evenfall.bench.page.Picture;
import evenfall.bench.page.Point;
import evenfall.bench.page.Raster;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.run.RunRecord;
import evenfall.bench.score.Course;
import evenfall.bench.score.GroundMap;
import evenfall.bench.score.ScoredAlert;
import evenfall.quantity.FixedDecimals;
import evenfall.quantity.Units;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** The charts of one run. */
final class RunCharts {
    private static final double LOW_PLOT = 120;
    private static final double MAP_PLOT = 150;
    private static final double ROW_LITTLE = 0.8;
    private static final double ROW_MUCH = 1.2;

    private final RunRecord run;
    private final Units units;
    private final Extent extent;
    private final String prefix;
    private final boolean half;
    private final Way way;

    /**
     * @param extent of the axes
     * @param prefix of the charts' names, to tell runs on one page apart; may be empty
     * @param half whether two stand beside each other
     */
    RunCharts(RunRecord run, Units units, Extent extent, String prefix, boolean half) {
        this.run = run;
        this.units = units;
        this.extent = extent;
        this.prefix = prefix;
        this.half = half;
        this.way = new Way(run.course());
    }

    /** A place on the boom whose height is shown. */
    enum Place {
        LEFT("left tip", "left-tip"),
        CENTRE("centre", "centre"),
        RIGHT("right tip", "right-tip");

        private final String words;
        private final String id;

        Place(String words, String id) {
            this.words = words;
            this.id = id;
        }

        String words() {
            return words;
        }

        private double trueM(Course.Moment moment) {
            return switch (this) {
                case LEFT -> moment.leftTipM();
                case CENTRE -> moment.centreM();
                case RIGHT -> moment.rightTipM();
            };
        }

        private double rightM(double halfWidthM) {
            return switch (this) {
                case LEFT -> -halfWidthM;
                case CENTRE -> 0;
                case RIGHT -> halfWidthM;
            };
        }
    }

    private LineChart chart(String name, String says, Axis up, double high) {
        Axis across = extent.distance(units);
        return half
                ? LineChart.half(prefix + name, says, across, up, high)
                : new LineChart(prefix + name, says, across, up, high);
    }

    private Picture named(String name, LineChart chart) {
        return new Picture(prefix + name, chart.svg());
    }

    private List<Point> along(Function<Course.Moment, @Nullable Double> value) {
        return Way.thinned(every(value));
    }

    private List<Point> every(Function<Course.Moment, @Nullable Double> value) {
        List<Point> points = new ArrayList<>();
        for (Course.Moment moment : run.course().moments()) {
            points.add(new Point(moment.atM() * Words.distancesPerMetre(units), value.apply(moment)));
        }
        return points;
    }

    private List<Point> said(Function<ReportedMoment, @Nullable Double> value) {
        List<Point> points = new ArrayList<>();
        for (ReportedMoment moment : run.report().moments()) {
            points.add(new Point(way.atM(moment.atS()) * Words.distancesPerMetre(units), value.apply(moment)));
        }
        return Way.thinned(points);
    }

    private static @Nullable Double times(@Nullable Double value, double factor) {
        return value == null ? null : value * factor;
    }

    /** Height of one place over distance, with the window. */
    Picture height(Place place) {
        double per = units.lengthsPerMetre();
        LineChart chart = chart(
                place.id,
                "Height of the boom's " + place.words
                        + " over the ground along the pass, with the heights that keep the rows even",
                extent.height(units),
                LOW_PLOT);
        chart.area(
                "keeps rows even",
                Ink.GREEN,
                Way.edge(every(moment -> moment.rowCv() == null ? null : moment.lowestM() * per), false),
                Way.edge(every(moment -> moment.rowCv() == null ? null : moment.highestM() * per), true));
        chart.line(place.words + ", true", Ink.BLUE, along(moment -> place.trueM(moment) * per));
        int sensor = nearest(place);
        if (sensor >= 0) {
            Rig.Height at = run.rig().sensors().heights().get(sensor);
            chart.line(
                    "sensor " + at.name() + ", reported",
                    Ink.VERMILION,
                    said(moment -> sensor < moment.heights().size()
                            ? times(moment.heights().get(sensor).heightM(), per)
                            : null));
        }
        return named(place.id, chart);
    }

    /** The height sensor nearest to a place; -1 where the machine has none. */
    private int nearest(Place place) {
        List<Rig.Height> sensors = run.rig().sensors().heights();
        double wantedM = place.rightM(0.5 * run.rig().boom().widthM());
        int best = -1;
        for (int i = 0; i < sensors.size(); i++) {
            if (best < 0
                    || Math.abs(sensors.get(i).rightM() - wantedM)
                            < Math.abs(sensors.get(best).rightM() - wantedM)) {
                best = i;
            }
        }
        return best;
    }

    /** Rate error over distance. */
    Picture rate() {
        double limitPct = 100 * run.rig().limits().rateError();
        LineChart chart = chart(
                "rate",
                "Rate error along the pass, true and as reported, with its limits",
                extent.rate(),
                LOW_PLOT + 30);
        chart.limit("limit +" + FixedDecimals.text(limitPct, 0) + " %", limitPct);
        chart.floor("limit −" + FixedDecimals.text(limitPct, 0) + " %", -limitPct);
        chart.line("true", Ink.BLUE, along(Course.Moment::rateErrorPct));
        chart.line("reported", Ink.VERMILION, said(ReportedMoment::rateErrorPct));
        return named("rate", chart);
    }

    /** What each row got in truth; null where no ground was covered. */
    @Nullable
    Picture trueMap() {
        return map("map-true", "What each row got along the pass, in truth", new Sprayed(run.ground())::share);
    }

    /** The same by the monitor's own numbers. */
    @Nullable
    Picture reportedMap() {
        ReportedMap reported = ReportedMap.of(run);
        return map("map-reported", "What each row got along the pass, by what the monitor reported", reported::share);
    }

    private @Nullable Picture map(String name, String says, Raster.Cells cells) {
        return groundMap(run.ground(), prefix + name, says, extent, units, half, cells);
    }

    static @Nullable Picture groundMap(
            GroundMap ground, String name, String says, Extent extent, Units units, boolean half, Raster.Cells cells) {
        if (ground.cells() < 2) {
            return null;
        }
        double per = Words.distancesPerMetre(units);
        double cellM = ground.cellFromM(1) - ground.cellFromM(0);
        double rowM = ground.rowRightM(1) - ground.rowRightM(0);
        double leftM = ground.rowRightM(0) - 0.5 * rowM;
        double rightM = ground.rowRightM(ground.rows() - 1) + 0.5 * rowM;
        Axis across = extent.distance(units);
        // The left wing stands at the top: to the left of one who looks along the pass, which goes to the right.
        Axis up = Axis.of("left of the centre, " + Words.distanceUnit(units), -rightM * per, -leftM * per);
        LineChart chart = half
                ? LineChart.half(name, says, across, up, MAP_PLOT)
                : new LineChart(name, says, across, up, MAP_PLOT);
        chart.raster(
                new Raster(ground.cells(), ground.rows(), cells),
                ground.cellFromM(0) * per,
                (ground.cellFromM(ground.cells() - 1) + cellM) * per,
                -rightM * per,
                -leftM * per);
        return new Picture(name, chart.svg());
    }

    /** How many rows got too little and too much along the pass: what the map's colours say, in another way. */
    Picture rowsOff() {
        LineChart chart = chart(
                "rows-off",
                "Share of the rows that got less than 80 % and more than 120 % of the mean, along the pass",
                new Axis("share of rows, %", 0, 100, 25, 0),
                LOW_PLOT - 20);
        chart.line("below 80 % of the mean", Ink.VERMILION, off(share -> share < ROW_LITTLE ? 1 : 0));
        chart.line("above 120 %", Ink.BLUE, off(share -> share > ROW_MUCH ? 1 : 0));
        return named("rows-off", chart);
    }

    private List<Point> off(ToDoubleFunction<Double> counts) {
        GroundMap ground = run.ground();
        Sprayed sprayed = new Sprayed(ground);
        List<Point> points = new ArrayList<>();
        for (int cell = 0; cell < ground.cells(); cell++) {
            double count = 0;
            for (int row = 0; row < ground.rows(); row++) {
                count += counts.applyAsDouble(sprayed.share(cell, row));
            }
            points.add(new Point(
                    (ground.cellFromM(cell) + 1) * Words.distancesPerMetre(units),
                    sprayed.isSprayed(cell) ? 100 * count / ground.rows() : null));
        }
        return Way.thinned(points);
    }

    /** Alerts on the time line; null where none was due and none was raised. */
    @Nullable
    Picture alerts() {
        if (run.alerts().isEmpty()) {
            return null;
        }
        Set<String> lanes = new LinkedHashSet<>();
        run.alerts().forEach(alert -> lanes.add(lane(alert)));
        List<String> names = List.copyOf(lanes);
        String says = "Alerts over time: a bar stands while the alert stands, a mark where it was due";
        LaneChart chart = half ? LaneChart.half(says, extent.time(), names) : new LaneChart(says, extent.time(), names);
        // One alert may stand across several times that it was due; its bar is drawn once.
        Set<ReportedAlert> drawn = new LinkedHashSet<>();
        for (ScoredAlert alert : run.alerts()) {
            int lane = names.indexOf(lane(alert));
            ReportedAlert raised = alert.raised();
            if (raised != null && drawn.add(raised)) {
                Double cleared = raised.clearedS();
                chart.bar(
                        lane,
                        ink(alert.verdict()),
                        raised.raisedS(),
                        cleared == null ? run.seconds() : cleared,
                        cleared == null);
            }
            Double due = alert.dueS();
            if (due != null) {
                chart.mark(lane, Ink.PURPLE, due);
            }
            double at = raised == null ? due == null ? 0 : due + 1 : raised.raisedS();
            chart.words(lane, Words.verdict(alert.verdict()), at);
        }
        return new Picture(prefix + "alerts", chart.svg());
    }

    private static String lane(ScoredAlert alert) {
        return alert.kind() + " " + alert.place();
    }

    private static Ink ink(ScoredAlert.Verdict verdict) {
        return switch (verdict) {
            case RIGHT -> Ink.GREEN;
            case MISSED, FALSE -> Ink.VERMILION;
            case BLINDED, MISLED, TOO_QUICK, NEAR_MISS -> Ink.BLACK;
        };
    }
}
