package evenfall.sim.world;

import evenfall.rig.BoomLayout;
import evenfall.sim.boom.Boom;
import evenfall.sim.chance.Chance;
import evenfall.sim.drive.Drive;
import evenfall.sim.drive.SectionPlan;
import evenfall.sim.fault.FaultParts;
import evenfall.sim.fault.FaultScript;
import evenfall.sim.fault.MachineTrouble;
import evenfall.sim.fault.OutletMounts;
import evenfall.sim.ground.CompositeGround;
import evenfall.sim.ground.Ground;
import evenfall.sim.ground.RoughField;
import evenfall.sim.jet.BoomFlight;
import evenfall.sim.jet.OutletStates;
import evenfall.sim.plumbing.Plumbing;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.WorldSpec;
import evenfall.sim.sensor.Scene;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.Pose;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * One run of a scenario.
 *
 * <p>Driver, plumbing and meter go on by 5 ms (200 Hz), chassis and boom by 10 ms (100 Hz; their steps are exact for ground that rises
 * evenly meanwhile); streams land and the ledger is written every 20 ms (50 Hz); truth is sampled every 200 ms (5 Hz). What the sensors say leaves as {@link Emission}s in the order of their arrival. One owner, one thread.
 */
public final class World {
    /** Step of the run, µs. */
    public static final long STEP_US = 5_000;

    /** Below this speed a rate means nothing, m/s: half a slow walk, our choice. */
    public static final double LEAST_RATE_SPEED_MPS = 0.5;

    private static final double STEP_S = STEP_US * 1e-6;
    private static final long MACHINE_US = 10_000;
    private static final double MACHINE_S = MACHINE_US * 1e-6;
    private static final long LANDING_US = 20_000;
    private static final double LANDINGS_PS = 1e6 / LANDING_US;
    private static final long SAMPLE_US = 200_000;

    private final WorldSpec spec;
    private final BoomLayout layout;
    private final TruthSink truth;
    private final long endUs;

    private final Ground ground;
    private final Drive drive;
    private final Chassis chassis;
    private final Boom boom;
    private final Plumbing plumbing;
    private final double heldAtStartM3;
    private final BoomFlight flight;
    private final double factorPerPa;
    private final Boxes boxes;
    private final OutletMounts mounts;
    private final FaultParts parts;
    private final FaultScript script;
    private final Arrivals arrivals = new Arrivals();
    private final View view = new View();

    private final RowLedger ledger;
    private final Sampler sampler;
    private final Falls falls;
    private final double[] outletRightM;
    private final OutletStates states;
    private final double[] heightM;

    private long timeUs;
    private final SectionPlan.Hand hand;
    private final double[] landedM;
    private long sectionMask;
    private boolean ended;

    /**
     * @param scenario what to run, with its seed
     * @param truth where the truth goes
     */
    public World(Scenario scenario, TruthSink truth) {
        this.spec = scenario.world();
        this.truth = truth;
        long seed = scenario.seed();
        FittedSpec fitted = spec.fitted();
        layout = fitted.boom();
        endUs = (long) Math.floor(scenario.seconds() * 1e6 / LANDING_US + 1e-9) * LANDING_US;
        ground = ground(spec, seed);
        drive = new Drive(spec.drive());
        chassis = new Chassis(spec.chassis());
        outletRightM = new double[layout.outlets()];
        states = new OutletStates(layout.outlets());
        heightM = states.heightM();
        for (int i = 0; i < outletRightM.length; i++) {
            outletRightM[i] = layout.outletRightM(i);
            states.rightM()[i] = outletRightM[i];
        }
        boom = new Boom(spec.boom(), outletRightM);
        Pose start = drive.pose();
        chassis.place(ground, start);
        boom.place(MACHINE_S, chassis, ground, start);
        landedM = new double[layout.outlets()];
        outletPlaces(landedM);
        plumbing = new Plumbing(
                spec.plumbing(),
                layout,
                fitted.outlet(),
                fitted.specificGravity(),
                spec.targetRateM(),
                spec.drive().startMps(),
                Chance.stream(seed, "outlets"));
        flight = new BoomFlight(
                FlightTables.of(fitted.outlet(), fitted.liquid(), !spec.idealStreams()), layout.outlets());
        factorPerPa = 1 / (fitted.outlet().ratedPressurePa() * fitted.specificGravity());
        heldAtStartM3 = plumbing.heldM3();
        hand = new SectionPlan.Hand(spec.sections());
        sectionMask = SectionPlan.allOf(layout.sections().size());
        falls = new Falls(outletRightM, flight.streams());
        ledger = new RowLedger(layout, flight.streams(), fitted.liquid().nitrogenKgpM3());
        sampler = new Sampler(layout);
        boxes = new Boxes(spec, seed, arrivals);
        mounts = new OutletMounts(layout.outlets());
        parts = boxes.parts(plumbing.trouble(), mounts, MachineTrouble.of(boom, chassis));
        script = new FaultScript(spec.faults(), seed);
        script.apply(0, parts);
        switchSections();
    }

    private static Ground ground(WorldSpec spec, long seed) {
        List<Ground> layers = new ArrayList<>(spec.features());
        spec.surveyed().ifPresent(layers::add);
        if (spec.roughness().isPresent()) {
            layers.add(RoughField.of(spec.roughness().get(), Chance.stream(seed, "ground")));
        }
        return layers.isEmpty() ? Ground.level() : new CompositeGround(layers);
    }

    /** Moment that the run has come to, µs. */
    public long timeUs() {
        return timeUs;
    }

    /** Moment at which the run ends, µs. */
    public long endUs() {
        return endUs;
    }

    /** Distance driven so far, m. */
    public double xM() {
        return drive.distanceM();
    }

    /** True speed, m/s. */
    public double speedMps() {
        return drive.speedMps();
    }

    /** How the boom hangs over its ground and where its streams land, by the last landing. */
    public RearView rearView() {
        double[] elevationM = new double[heightM.length];
        boom.outletElevationsM(elevationM);
        return new RearView(timeUs, drive.distanceM(), outletRightM, elevationM, heightM, falls.lines);
    }

    /** Runs to the end. */
    public void run(Consumer<? super Emission> door) {
        while (step(door)) {
            // All is done by the step.
        }
    }

    /**
     * One step. What is still on a line when the run ends never arrives.
     *
     * @param door takes what has arrived
     * @return false when the run has ended
     */
    public boolean step(Consumer<? super Emission> door) {
        if (timeUs >= endUs) {
            end();
            return false;
        }
        double beforeM = drive.distanceM();
        drive.step(STEP_S);
        plumbing.step(STEP_S, drive.speedMps());
        double xM = drive.distanceM();
        boxes.pass(timeUs, STEP_US, plumbing.meteredM3ps() * STEP_S, xM - beforeM);
        timeUs += STEP_US;
        if (timeUs % MACHINE_US == 0) {
            Pose pose = drive.pose();
            chassis.step(MACHINE_S, ground, pose);
            boom.step(MACHINE_S, chassis, ground, pose);
        }
        if (timeUs % LANDING_US == 0) {
            land(timeUs % SAMPLE_US == 0);
        }
        script.apply(timeUs, parts);
        if (timeUs % LANDING_US == 0) {
            switchSections();
        }
        boxes.at(timeUs, view);
        arrivals.letOut(timeUs, door);
        return true;
    }

    private void end() {
        if (!ended) {
            ended = true;
            ledger.close(plumbing.tankM3(), plumbing.lineLeakM3(), plumbing.heldM3() - heldAtStartM3);
            truth.end(ledger);
        }
    }

    private void switchSections() {
        long wanted = hand.maskAt(drive);
        if (wanted != sectionMask) {
            sectionMask = wanted;
            plumbing.switchSections(wanted);
        }
    }

    /** Where each outlet is along the way, m: with the machine, and as far ahead of it as it sways. */
    private void outletPlaces(double[] into) {
        double xM = drive.distanceM();
        for (int i = 0; i < into.length; i++) {
            into[i] = xM + boom.outletForwardM(i);
        }
    }

    /** Lets everything fall that has left the outlets since the last time. */
    private void land(boolean sample) {
        double xM = drive.distanceM();
        double speedMps = drive.speedMps();
        falls.outletM3 = plumbing.drain();
        boom.outletHeightsM(heightM);
        outletPlaces(falls.outletM);
        falls.leaks = false;
        double[] factor = states.speedFactor();
        for (int i = 0; i < heightM.length; i++) {
            falls.goneM[i] = falls.outletM[i] - landedM[i];
            landedM[i] = falls.outletM[i];
            factor[i] = Math.sqrt(plumbing.outletPressurePa(i) * factorPerPa);
            falls.leakedM3[i] = plumbing.leakedM3(i);
            falls.leaks |= falls.leakedM3[i] > 0;
            states.rollRad()[i] = boom.outletRollRad(i);
            states.upMps()[i] = boom.outletVerticalSpeedMps(i);
            states.forwardMps()[i] = drive.speedAtM(outletRightM[i]) - speedMps + boom.outletForwardSpeedMps(i);
        }
        System.arraycopy(falls.outletM3, 0, states.quantity(), 0, heightM.length);
        flight.land(states, speedMps, falls.lines);
        if (mounts.anyChanged()) {
            falls.turn(mounts, spec.fitted().outlet(), states, speedMps);
        }
        if (spec.idealStreams()) {
            for (double[] sigmaM : falls.lines.sigmaM()) {
                Arrays.fill(sigmaM, 0);
            }
        }
        ledger.fall(falls);
        ledger.reached(xM);
        truth.heights(timeUs, heightM);
        if (sample) {
            sampler.take(falls, LANDINGS_PS);
            truth.sample(sampler.end(
                    timeUs,
                    xM,
                    speedMps,
                    new TruthSample.Flows(
                            plumbing.outletsFlowM3ps(),
                            plumbing.flowM3ps(),
                            plumbing.meanOutletPressurePa(),
                            plumbing.feedPressurePa(),
                            plumbing.widthOnM(),
                            sectionMask),
                    rateError(speedMps),
                    heightM));
        }
    }

    private OptionalDouble rateError(double speedMps) {
        double widthM = plumbing.widthOnM();
        if (speedMps < LEAST_RATE_SPEED_MPS || !(widthM > 0)) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(plumbing.outletsFlowM3ps() / (speedMps * widthM) / spec.targetRateM() - 1);
    }

    /** What sensors see. */
    private final class View implements Scene {
        @Override
        public double heightAtM(double rightM) {
            return boom.heightAtM(rightM);
        }

        @Override
        public double pressurePa() {
            return plumbing.feedPressurePa();
        }

        @Override
        public long sectionMask() {
            return sectionMask;
        }

        @Override
        public double airC() {
            return spec.airC();
        }

        @Override
        public double speedMps() {
            return drive.speedMps();
        }

        @Override
        public double xM() {
            return drive.distanceM();
        }

        @Override
        public double aheadM() {
            return drive.pose().xM();
        }

        @Override
        public double asideM() {
            return drive.pose().yM();
        }

        @Override
        public double headingRad() {
            return drive.pose().headingRad();
        }
    }
}
