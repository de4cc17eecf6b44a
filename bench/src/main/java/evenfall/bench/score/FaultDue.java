package evenfall.bench.score;

import evenfall.bench.received.ReportedAlert;
import evenfall.sim.fault.ScriptedFault;
import evenfall.sim.scenario.Scenario;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a scripted fault may be due for: any one of its kinds.
 *
 * @param fault its word in the library
 * @param kinds the contract's words; empty where nothing that is fitted can tell
 * @param place where the scenario puts it; {@code boom} where the part is there once
 * @param fromS when it comes, s
 * @param toS when it goes, s; infinite where it stays
 * @param sign how it can be told
 */
record FaultDue(String fault, List<String> kinds, String place, double fromS, double toS, FaultSign sign) {
    FaultDue {
        kinds = List.copyOf(kinds);
    }

    /**
     * @param showsS when it begins to show, s
     * @param latestS an alert after this is late, s
     */
    record Time(double showsS, double latestS) {}

    /** Those of a scenario. */
    static List<FaultDue> of(Scenario scenario) {
        FaultSigns signs = new FaultSigns(scenario);
        List<FaultDue> all = new ArrayList<>();
        for (ScriptedFault f : scenario.world().faults()) {
            all.add(new FaultDue(
                    f.fault().id(),
                    f.fault().alerts(),
                    f.where().isEmpty() ? "boom" : f.where(),
                    f.atS(),
                    f.forS().isPresent() ? f.atS() + f.forS().getAsDouble() : Double.POSITIVE_INFINITY,
                    f.fault().alerts().isEmpty() ? FaultSign.never() : signs.of(f)));
        }
        meterFromTheStart(scenario, all);
        return all;
    }

    /**
     * A meter that gives other pulses than the rig file says, from the start: as the same fault when it comes later, but for two things.
     * Nobody has learnt this machine's flow by pressure before, so it shows only beyond what indicator and gauge may be off by
     * uncalibrated; and the rate that it shows tells nothing of the meter, so only what bids to look at it counts.
     */
    private static void meterFromTheStart(Scenario scenario, List<FaultDue> all) {
        double times = Unseen.pulsesTimes(scenario);
        if (times == 1 || scenario.belief().sensors().pressure().isEmpty()) {
            return;
        }
        FaultSigns signs = new FaultSigns(scenario);
        double believed = scenario.belief().liquid().specificGravity();
        double off = times * Math.sqrt(believed / scenario.world().fitted().specificGravity()) - 1;
        if (!FaultSigns.showsUncalibrated(off)) {
            return;
        }
        String kind = off > 0 ? "outlet-open" : "outlet-blocked";
        all.add(new FaultDue(
                "meter-factor-wrong", List.of(kind), "boom", 0, Double.POSITIVE_INFINITY, signs.fromTheStart(off)));
    }

    /** When it is due by its sign; null where it never shows for long enough. */
    @Nullable
    Time due(List<TruthMoment> truth) {
        TruthMoment onset = null;
        double showsS = Double.NaN;
        for (TruthMoment moment : truth) {
            if (moment.atS() < fromS - 1e-9 || moment.atS() >= toS) {
                continue;
            }
            onset = onset == null ? moment : onset;
            if (!sign.shows().at(moment, onset)) {
                showsS = Double.NaN;
                continue;
            }
            showsS = Double.isNaN(showsS) ? moment.atS() : showsS;
            if (moment.atS() - showsS >= sign.leastS() - 1e-9) {
                return new Time(showsS, showsS + sign.withinS());
            }
        }
        return null;
    }

    /** Whether it could do something at a place: a wing's fault does nothing to the other wing. */
    boolean isAt(String at) {
        return at.equals("boom") || !(place.equals("left") || place.equals("right")) || place.equals(at);
    }

    /** Whether an alert may be this fault's doing. */
    boolean explains(ReportedAlert alert) {
        return kinds.contains(alert.kind())
                && isAt(alert.place())
                && alert.raisedS() >= fromS
                && alert.raisedS() <= toS + ScoringRules.LATE_S;
    }
}
