package evenfall.sim.ground;

/**
 * A feature of the land, laid over other ground. All are smooth: height and slope are continuous, so
 * that no tyre sees a step. Their sizes are for the scenario to say; what a terrace or a dead furrow
 * looks like is common practice, no source.
 */
public sealed interface Feature extends Ground
        permits DeadFurrow, Dip, HeadlandBank, Knoll, Rise, Ruts, SideSlope, Terrace, Washout {}
