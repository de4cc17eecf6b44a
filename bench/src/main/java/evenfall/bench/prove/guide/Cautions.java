package evenfall.bench.prove.guide;

/** What must be said before anybody opens a valve or goes under a boom. */
final class Cautions {
    private static final String LAST =
            "The product's label, the machine's manual, local codes and a licensed person's judgement"
                    + " stand above what this program says.";

    private Cautions() {}

    /** Where liquid runs. */
    static void liquid(Dialogue dialogue) {
        dialogue.say(
                "Caution: liquid under pressure. Relieve the pressure before you open a line. Use water where you can.");
        dialogue.say(
                "Wear the gloves, boots and eye protection that the label asks for. Lead the liquid back into a tank,"
                        + " never onto the ground.");
        dialogue.say("Nobody under the boom or in its swing. " + LAST);
    }

    /** Where people walk around a boom. */
    static void boom(Dialogue dialogue) {
        dialogue.say(
                "Caution: a boom that moves or falls kills. Set it down or prop it, engine off, before anybody goes under it.");
        dialogue.say("Look up before you unfold: keep away from overhead lines. " + LAST);
    }

    /** Where a machine is driven. */
    static void driving(Dialogue dialogue) {
        dialogue.say("Caution: a course without people, with room to stop. One drives, another reads.");
        dialogue.say(LAST);
    }

    /** Where leads are touched. */
    static void wiring(Dialogue dialogue) {
        dialogue.say("Caution: mount and wire nothing while the machine runs. " + LAST);
    }
}
