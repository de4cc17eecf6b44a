package evenfall.bench.choose;

import java.util.List;

/** What crews say of living with each form of outlet: common practice, no source. */
final class HandlingNotes {
    private static final List<String> BAR = List.of(
            "Bars are long and stand out: fold slowly and watch that none meets its neighbour, the frame or the cradle.",
            "In the cradle they carry the boom's knocks. Crews take the end bars off, or turn and tie them, before they go on the road.",
            "They break on fences, posts and trees at the headland. Carry spares, with brackets.",
            "A bar that twists closes its lines up. Crews hold both ends with straps or a second bracket, mark the right place with"
                    + " paint, and look along the boom after every fold.",
            "To change the metering size each bar is turned or opened by hand: relieve the pressure first, and count that none was"
                    + " forgotten.");

    private static final List<String> NOZZLE = List.of(
            "Nozzles sit within the boom's own outline: nothing more to mind in folding.",
            "To change a set each outlet is taken off and put on by hand: relieve the pressure first, wear gloves and eye protection.",
            "Holes that look level must point the same way: a nozzle put on askew throws its whole fan askew.");

    private HandlingNotes() {}

    static String title(boolean bar) {
        return (bar ? "Living with bars" : "Living with nozzles") + " (common practice, no source)";
    }

    static List<String> of(boolean bar) {
        return bar ? BAR : NOZZLE;
    }
}
