package evenfall.sim.fault;

import evenfall.sim.chance.Chance;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Brings the faults of a scenario and takes them away again, each at its moment.
 *
 * <p>Call {@link #apply} once at time 0, before the first step, and then at the end of each step, before anything is sent about that
 * moment: a fault then touches what is sent at {@code at} and after, and what flows from {@code at} on, and no longer what is sent at
 * {@code at + for}.
 */
public final class FaultScript {
    private record Event(long timeUs, boolean comes, ScriptedFault scripted, Chance chance) {}

    private final List<Event> events;
    private final List<ScriptedFault> standing = new ArrayList<>();
    private int next;
    private long nextUs;

    /**
     * @param faults in any order
     * @param seed of the scenario
     */
    public FaultScript(List<ScriptedFault> faults, long seed) {
        List<Event> all = new ArrayList<>();
        for (ScriptedFault scripted : faults) {
            Chance chance = Chance.stream(
                    seed,
                    "fault " + scripted.fault().id() + " " + scripted.where() + " " + Long.toString(scripted.fromUs()));
            all.add(new Event(scripted.fromUs(), true, scripted, chance));
            if (scripted.untilUs() != Long.MAX_VALUE) {
                all.add(new Event(scripted.untilUs(), false, scripted, chance));
            }
        }
        // What ends at a moment ends before what begins at it: the two may be the same fault at the same place.
        all.sort(Comparator.comparingLong(Event::timeUs).thenComparing(Event::comes));
        events = List.copyOf(all);
        nextUs = events.isEmpty() ? Long.MAX_VALUE : events.get(0).timeUs();
    }

    /**
     * Does what is due.
     *
     * @param timeUs moment of the run, µs; never before an earlier call's
     */
    public void apply(long timeUs, FaultParts parts) {
        while (timeUs >= nextUs) {
            Event event = events.get(next++);
            ScriptedFault scripted = event.scripted();
            double howMuch = event.comes() ? scripted.howMuch() : 0;
            for (int place : scripted.places()) {
                scripted.fault().effect().set(parts, place, howMuch, event.chance());
            }
            if (event.comes()) {
                standing.add(scripted);
            } else {
                standing.remove(scripted);
            }
            nextUs = next < events.size() ? events.get(next).timeUs() : Long.MAX_VALUE;
        }
    }

    /** The faults that are there now, in the order in which they came. */
    public List<ScriptedFault> standing() {
        return List.copyOf(standing);
    }
}
