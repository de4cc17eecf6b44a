package evenfall.bench.matrix;

import evenfall.bench.score.FaultOutcome;
import evenfall.bench.score.ScoredAlert;
import evenfall.bench.score.Senses;
import evenfall.bench.score.Spread;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;

/** All runs counted. Its size does not depend on how many hours there were. */
public final class Matrix {
    private final Wanted wanted;
    private final Map<Group, Tally> groups = new EnumMap<>(Group.class);
    private final Map<String, FaultRow> alone = new LinkedHashMap<>();
    private final Map<String, FaultRow> company = new TreeMap<>();
    private final Map<String, EventRow> events = new TreeMap<>();
    private final Map<String, Cell> scenarios = new LinkedHashMap<>();
    private final Map<String, Cell> grounds = new LinkedHashMap<>();
    private final Map<String, Senses> senses = new TreeMap<>();
    private final Map<String, Integer> unfoundedInCleanHours = new TreeMap<>();

    Matrix(Wanted wanted) {
        this.wanted = wanted;
    }

    void count(Marked run) {
        Task task = run.task();
        groups.computeIfAbsent(task.group(), g -> new Tally()).count(run);
        for (ScoredAlert alert : run.alerts()) {
            events.computeIfAbsent(alert.kind(), k -> new EventRow()).count(alert);
        }
        if (run.healthy()) {
            senses.computeIfAbsent(run.ground(), g -> new Senses()).add(run.senses());
        }
        switch (task.group()) {
            case SCENARIOS -> {
                cell(scenarios, run).count(run);
                for (FaultOutcome outcome : run.faults()) {
                    company.computeIfAbsent(outcome.fault(), f -> new FaultRow())
                            .count(outcome);
                }
            }
            case FAULTS -> {
                FaultRow row = alone.computeIfAbsent(task.name(), n -> new FaultRow());
                row.count(run);
                run.faults().forEach(row::count);
            }
            case GROUND -> cell(grounds, run).count(run);
            case CLEAN -> {
                for (ScoredAlert alert : run.alerts()) {
                    if (alert.verdict() == ScoredAlert.Verdict.FALSE) {
                        unfoundedInCleanHours.merge(alert.kind(), 1, Integer::sum);
                    }
                }
            }
        }
    }

    private static Cell cell(Map<String, Cell> cells, Marked run) {
        Task task = run.task();
        return cells.computeIfAbsent(
                task.name() + " " + task.outlet(), k -> new Cell(task.name(), task.outlet(), run.ground()));
    }

    /** Which runs were wanted. */
    public Wanted wanted() {
        return wanted;
    }

    /** Those groups that were run. */
    public Map<Group, Tally> groups() {
        return groups;
    }

    public int runs() {
        return groups.values().stream().mapToInt(Tally::runs).sum();
    }

    public double hours() {
        double hours = 0;
        for (Tally tally : groups.values()) {
            hours += tally.hours();
        }
        return hours;
    }

    /** Faults that were alone, by fault, place and size. */
    public Map<String, FaultRow> alone() {
        return alone;
    }

    /** Faults of scenarios, by fault. */
    public Map<String, FaultRow> company() {
        return company;
    }

    /** By kind of alert. */
    public Map<String, EventRow> events() {
        return events;
    }

    /** By scenario and outlet type. */
    public Iterable<Cell> scenarios() {
        return scenarios.values();
    }

    /** By class of ground and outlet type. */
    public Iterable<Cell> grounds() {
        return grounds.values();
    }

    /** By class of ground, of all runs without a scripted fault. */
    public Map<String, Senses> senses() {
        return senses;
    }

    /** False alerts of the clean hours, by kind. */
    public Map<String, Integer> unfoundedInCleanHours() {
        return unfoundedInCleanHours;
    }

    /** Rate error in steady running, of all runs without a scripted fault, percentage points. */
    Spread steadyRate() {
        Spread all = new Spread();
        for (Senses one : senses.values()) {
            all.add(one.of(Senses.RATE_STEADY));
        }
        return all;
    }
}
