package evenfall.sim.fault;

import evenfall.config.ConfigException;
import evenfall.config.ConfigNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the {@code faults} of a scenario; their form is that of {@code fault.schema.json} beside this class. */
public final class FaultReader {
    private FaultReader() {}

    /**
     * @param holder the place in the file that holds the list {@code faults}; the list may be absent
     * @param places of the machine as it is
     */
    public static List<ScriptedFault> read(ConfigNode holder, FaultPlaces places) throws ConfigException {
        List<ScriptedFault> faults = new ArrayList<>();
        for (ConfigNode line : holder.list("faults")) {
            ScriptedFault scripted = fault(line, places);
            for (ScriptedFault earlier : faults) {
                if (earlier.meets(scripted)) {
                    throw line.wrong(
                            "fault",
                            scripted.fault().id() + " is there already at that time and place",
                            "the same fault at the same place one after another");
                }
            }
            faults.add(scripted);
        }
        return faults;
    }

    private static ScriptedFault fault(ConfigNode line, FaultPlaces places) throws ConfigException {
        String id = line.text("fault");
        Optional<Fault> found = Faults.find(id);
        if (found.isEmpty()) {
            throw line.wrong("fault", "there is no fault " + id + "; the nearest is " + Faults.nearest(id), ids());
        }
        Fault fault = found.get();
        if (!places.has(fault.part())) {
            throw line.wrong("fault", "this machine has no " + fault.part().words(), "faults of parts that are fitted");
        }
        Amount amount = fault.amount();
        double howMuch = line.number("how_much", amount.usual());
        boolean allowed = amount.isGiven() && howMuch >= amount.least() && howMuch <= amount.most() && howMuch != 0;
        if (line.has("how_much") && !allowed) {
            throw line.wrong(
                    "how_much",
                    line.text("how_much") + " cannot be used with " + id,
                    amount.words() + (howMuch == 0 && amount.isGiven() ? ", not 0" : ""));
        }
        return new ScriptedFault(
                fault,
                line.number("at_s"),
                line.has("for_s") ? OptionalDouble.of(line.number("for_s")) : OptionalDouble.empty(),
                line.text("where", ""),
                places(line, fault, places),
                howMuch);
    }

    private static List<Integer> places(ConfigNode line, Fault fault, FaultPlaces places) throws ConfigException {
        if (fault.place() == PlaceKind.NOWHERE) {
            if (line.has("where")) {
                throw line.wrong("where", line.text("where") + " cannot be used with " + fault.id(), "nothing here");
            }
            return List.of(0);
        }
        if (!line.has("where")) {
            throw line.wrong("where", "is missing", places.allowed(fault.place()));
        }
        String where = line.text("where");
        Optional<List<Integer>> found = places.find(fault.place(), where);
        if (found.isEmpty()) {
            throw line.wrong("where", where + " is no place for " + fault.id(), places.allowed(fault.place()));
        }
        return found.get();
    }

    private static String ids() {
        List<String> ids = new ArrayList<>();
        for (Fault fault : Faults.all()) {
            ids.add(fault.id());
        }
        return String.join(", ", ids);
    }
}
