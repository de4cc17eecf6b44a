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
import evenfall.sim.plumbing.Plumbing;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.WorldSpec;
import evenfall.sim.sensor.Scene;
import evenfall.sim.vehicle.Chassis;
import evenfall.sim.vehicle.Pose;
import java.util.ArrayList;
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

    /** A sample needs the lines of its moment, so no more than this can wait. */
    private static final int LANDINGS_AT_ONCE = (int) (SAMPLE_US / LANDING_US);

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
    private final Boxes boxes;
    private final FaultParts parts;
    private final FaultScript script;
    private final Arrivals arrivals = new Arrivals();
    private final View view = new View();

    private final RowLedger ledger;
    private final Sampler sampler;
    private final Landing landing;

    private long timeUs;
    private final SectionPlan.Hand hand;
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
        double[] outletRightM = new double[layout.outlets()];
        for (int i = 0; i < outletRightM.length; i++) {
            outletRightM[i] = layout.outletRightM(i);
        }
        boom = new Boom(spec.boom(), outletRightM);
        Pose start = drive.pose();
        chassis.place(ground, start);
        boom.place(MACHINE_S, chassis, ground, start);
        plumbing = new Plumbing(
                spec.plumbing(),
                layout,
                fitted.outlet(),
                fitted.specificGravity(),
                spec.targetRateM(),
                spec.drive().startMps(),
                Chance.stream(seed, "outlets"));
        heldAtStartM3 = plumbing.heldM3();
        hand = new SectionPlan.Hand(spec.sections());
        sectionMask = SectionPlan.allOf(layout.sections().size());
        ledger = new RowLedger(
                layout, layout.outlets() * LANDINGS_AT_ONCE, fitted.liquid().nitrogenKgpM3());
        sampler = new Sampler(layout);
        boxes = new Boxes(spec, seed, arrivals);
        OutletMounts mounts = new OutletMounts(layout.outlets());
        landing = new Landing(spec, ground, mounts, ledger, truth, outletRightM, LANDINGS_AT_ONCE);
        landing.start(drive, boom);
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
        return switch (layers.size()) {
            case 0 -> Ground.level();
            case 1 -> layers.get(0);
            default -> new CompositeGround(layers);
        };
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
        landing.workOut();
        int outlets = spec.fitted().boom().outlets();
        double[] rightM = new double[outlets];
        for (int i = 0; i < outlets; i++) {
            rightM[i] = spec.fitted().boom().outletRightM(i);
        }
        double[] elevationM = new double[outlets];
        boom.outletElevationsM(elevationM);
        double[] heightM = new double[outlets];
        boom.outletHeightsM(heightM);
        Falls falls = landing.falls();
        int from = Math.max(0, falls.places() - outlets);
        return new RearView(timeUs, drive.distanceM(), rightM, elevationM, heightM, falls.lines, from);
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
            landing.workOut();
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

    /** Lets everything fall that has left the outlets since the last time. */
    private void land(boolean sample) {
        landing.take(timeUs, drive, boom, plumbing);
        if (!sample) {
            return;
        }
        landing.workOut();
        double speedMps = drive.speedMps();
        sampler.take(landing.falls(), LANDINGS_PS);
        truth.sample(sampler.end(
                timeUs,
                drive.distanceM(),
                speedMps,
                new TruthSample.Flows(
                        plumbing.outletsFlowM3ps(),
                        plumbing.flowM3ps(),
                        plumbing.meanOutletPressurePa(),
                        plumbing.feedPressurePa(),
                        plumbing.widthOnM(),
                        sectionMask),
                rateError(speedMps),
                landing.heightsM()));
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
        public double tankGoneM3() {
            return plumbing.tankM3();
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
