package evenfall.bench.prove.trial;

import evenfall.bench.prove.guide.Constant;
import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.guide.Prover;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.listen.PortTroubleException;
import evenfall.bench.prove.listen.SerialInstruments;
import evenfall.bench.prove.listen.Session;
import evenfall.config.ConfigException;
import evenfall.quantity.FixedDecimals;
import evenfall.rig.Rig;
import evenfall.sim.chance.Chance;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.scenario.Scenarios;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What a person does and reads in the simulated yard: opens the valve, drives, holds the board, reads the scale and the tape with the
 * errors that they may have. All of it is invented. Whoever leads the test decides what is answered.
 */
public final class Hands implements AutoCloseable {
    private static final double SCALE_KG = 0.01;
    private static final double SCALE_STEP_KG = 0.005;
    private static final double SPILL_KG = 0.01;
    private static final double DENSITY_KGPM3 = 998.2;
    private static final double DENSITY_HALF_KGPM3 = 0.5;
    private static final double EMPTY_KG = 1.2;
    private static final double TAPE_M = 0.002;
    private static final double COURSE_M = 60;
    private static final double DRIVE_MPS = 6;
    private static final double FLOW_S = 3;
    private static final double NOMINAL_LPM = 2.8;
    private static final double JUG_L = 0.02;
    private static final double HANDS_S = 0.7;

    private final Prover prover;
    private final Rig rig;
    private final Yard yard;
    private final SerialInstruments instruments;
    private final Chance hand;
    private final double scaleOffKg;
    private final double densityKgpM3;
    private final double tapeOffM;
    private final double jugOffL;
    private final List<Double> outletsLpm = new ArrayList<>();
    private final Map<Integer, Double> caughtKgOfRun = new HashMap<>();
    private int sensor;

    public Hands(Prover prover, long seed) throws ConfigException, IOException {
        this.prover = prover;
        Scenario scenario = Scenarios.find("level-field");
        yard = new Yard(seed, scenario.belief());
        rig = yard.rig(scenario);
        instruments = new SerialInstruments(Optional.of(rig), null, SerialInstruments.usualBaud());
        hand = Chance.stream(seed, "hand");
        scaleOffKg = within(SCALE_KG);
        densityKgpM3 = DENSITY_KGPM3 + within(DENSITY_HALF_KGPM3);
        tapeOffM = within(TAPE_M);
        jugOffL = within(JUG_L);
        for (int i = 0; i < rig.boom().outlets(); i++) {
            outletsLpm.add(NOMINAL_LPM * (1 + 0.03 * hand.nextGaussian()));
        }
        // One worn, one partly blocked, somewhere.
        outletsLpm.set(hand.nextInt(outletsLpm.size()), 1.18 * NOMINAL_LPM);
        outletsLpm.set(hand.nextInt(outletsLpm.size()), 0.3 * NOMINAL_LPM);
    }

    private double within(double halfWidth) {
        return halfWidth * (2 * hand.nextDouble() - 1);
    }

    /** The machine as its installer describes it; its constants are not those of the yard. */
    public Rig rig() {
        return rig;
    }

    private static int number(String key) {
        int from = key.lastIndexOf('[');
        int to = key.lastIndexOf(']');
        return from < 0 ? 0 : Integer.parseInt(key.substring(from + 1, to));
    }

    private static String last(String key) {
        return key.substring(key.lastIndexOf('.') + 1);
    }

    /** What a person would answer; empty for the usual answer. */
    public String answer(Step.Ask step) {
        return typed(step);
    }

    boolean goesOn(Step.More step) {
        String key = last(step.key());
        int n = number(key);
        return key.startsWith("runs")
                ? n <= 6
                : key.startsWith("stations")
                        ? n <= 5
                        : key.startsWith("steps") ? n <= 2 : !key.startsWith("sensors") && n <= 5;
    }

    private String typed(Step.Ask step) {
        String key = last(step.key());
        return switch (key.indexOf('[') < 0 ? key : key.substring(0, key.indexOf('['))) {
            case "measured_by" -> prover == Prover.FLOW ? "scale" : "jug";
            case "accuracy" -> prover == Prover.FLOW ? decimals(SCALE_KG) + " kg" : decimals(JUG_L) + " L";
            case "step" -> prover == Prover.FLOW ? decimals(SCALE_STEP_KG) + " kg" : "0.01 L";
            case "density" -> decimals(DENSITY_KGPM3) + " kg/m3";
            case "density_accuracy" -> decimals(DENSITY_HALF_KGPM3) + " kg/m3";
            case "liquid_temperature", "air" -> FixedDecimals.text(yard.airC, 0) + " C";
            case "flow" -> number(step.key()) <= 3 ? "low" : "high";
            case "empty" -> decimals(EMPTY_KG) + " kg";
            case "full" -> decimals(read(EMPTY_KG + caughtKgOfRun.getOrDefault(number(step.key()), 0.0))) + " kg";
            case "name" -> {
                sensor = 2;
                yield rig.sensors().heights().get(sensor).name();
            }
            case "height" -> {
                double tapeM = 0.1 + 0.2 * number(step.key());
                board(tapeM + tapeOffM + 0.001 * hand.nextGaussian());
                yield decimals(tapeM) + " m";
            }
            case "ground" -> number(step.key()) <= 3 ? "hard" : "soft";
            case "course" -> decimals(COURSE_M) + " m";
            case "course_accuracy" -> "0.05 m";
            case "pressure" -> "200 kPa";
            case "nominal" -> decimals(NOMINAL_LPM) + " L/min";
            case "catches" -> caught(outletsLpm.get(number(step.key()) - 1));
            case "repeats" -> caught(outletsLpm.get(0));
            case "speed" -> "15 km/h";
            default -> "";
        };
    }

    private static String decimals(double value) {
        return new java.math.BigDecimal(FixedDecimals.text(value, 4))
                .stripTrailingZeros()
                .toPlainString();
    }

    private double read(double kg) {
        return SCALE_STEP_KG * Math.round((kg + scaleOffKg) / SCALE_STEP_KG);
    }

    private String caught(double lpm) {
        double litres = lpm + jugOffL + 0.01 * hand.nextGaussian();
        return FixedDecimals.text(Math.max(0, litres), 2) + " L";
    }

    private void board(double heightM) {
        yard.board(rig.sensors().heights().get(sensor).rightM(), heightM);
    }

    /** Begins a recording, and does meanwhile what is to be done at the machine. */
    public Doing start(Step.Measure step) throws PortTroubleException, InterruptedException {
        Step.Signal signal = step.signal();
        if (signal instanceof Step.Listing) {
            return new Doing(
                    step,
                    new Found(new Recording.Ports(List.of(
                            new Recording.Port(yard.hubDevice(), "virtual"),
                            new Recording.Port(yard.receiverDevice(), "virtual"),
                            new Recording.Port(yard.noiseDevice(), "virtual")))));
        }
        if (step.key().endsWith(".free")) {
            yard.noBoard();
        } else if (step.key().endsWith(".covered")) {
            board(0.3);
        }
        if (signal instanceof Step.Echoing echoing && echoing.marked()) {
            board(0.3);
        }
        pause(HANDS_S);
        yard.discardUnheard();
        return new Doing(step, instruments.start(signal));
    }

    /** A recording with the hands at work on a thread of their own. */
    public final class Doing implements Session {
        private final Step.Measure step;
        private final Session session;
        private final Thread thread;

        Doing(Step.Measure step, Session session) {
            this.step = step;
            this.session = session;
            this.thread = new Thread(this::work, "trial-hands");
            thread.setDaemon(true);
            thread.start();
        }

        private void work() {
            try {
                if (step.signal() instanceof Step.Counting counting) {
                    pause(HANDS_S);
                    act(counting, number(step.key()));
                    pause(HANDS_S);
                } else if (step.signal() instanceof Step.Echoing echoing && echoing.marked()) {
                    pause(session.seconds() / 3);
                    session.mark();
                    yard.noBoard();
                    pause(session.seconds() * 2 / 3);
                } else {
                    pause(session.seconds());
                }
            } catch (InterruptedException e) {
                // Whoever leads wants the end now; what was begun is shut already.
                Thread.currentThread().interrupt();
            }
        }

        /** Waits until the work is done. */
        public void await() throws InterruptedException {
            thread.join();
        }

        /** Whether the work is done. */
        public boolean isDone() {
            return !thread.isAlive();
        }

        @Override
        public double seconds() {
            return session.seconds();
        }

        /** The hand marks by itself. */
        @Override
        public void mark() {}

        @Override
        public String soFar() {
            return session.soFar();
        }

        @Override
        public double amount() {
            return session.amount();
        }

        /** Shuts the valve when it is still open; a drive goes on to the end of its course. */
        @Override
        public Recording finish() throws PortTroubleException, InterruptedException {
            if (step.signal() == Step.Counting.FLOW) {
                thread.interrupt();
            }
            thread.join();
            return session.finish();
        }

        @Override
        public void close() {
            thread.interrupt();
            session.close();
        }
    }

    /** The list of ports, which needs no time. */
    private record Found(Recording.Ports ports) implements Session {
        @Override
        public double seconds() {
            return 1e-3;
        }

        @Override
        public void mark() {
            // Nothing happens over time.
        }

        @Override
        public String soFar() {
            return ports.found().size() + " ports";
        }

        @Override
        public Recording finish() {
            return ports;
        }

        @Override
        public void close() {
            // Holds nothing.
        }
    }

    private void act(Step.Counting counting, int run) throws InterruptedException {
        boolean first = run <= 3;
        if (counting == Step.Counting.FLOW) {
            yard.takePassedM3();
            yard.flow((first ? 60 : 120) / 60_000.0);
            try {
                pause(FLOW_S);
            } finally {
                yard.flow(0);
                double kg = yard.takePassedM3() * densityKgpM3 - SPILL_KG * hand.nextGaussian();
                caughtKgOfRun.put(run, kg * (1 - 1.2 / densityKgpM3) / (1 - 1.2 / 8000));
            }
        } else {
            yard.takeDrivenM();
            yard.drive(DRIVE_MPS, first ? 0 : 0.01);
            try {
                double leftM = COURSE_M - yard.drivenM();
                while (leftM > 0.05) {
                    pause(leftM / DRIVE_MPS);
                    leftM = COURSE_M - yard.drivenM();
                }
            } finally {
                yard.drive(0, 0);
            }
        }
    }

    private static void pause(double seconds) throws InterruptedException {
        Thread.sleep(Math.max(1, Math.round(1000 * seconds)));
    }

    /** What was true, beside what was found; nothing for a test without a constant. */
    public List<String> truth(Proof proof) {
        List<String> lines = new ArrayList<>();
        for (Constant constant : proof.constants()) {
            Double truth = truthOf();
            if (truth != null) {
                lines.add("  The yard's truth: " + FixedDecimals.text(truth, 4) + "; found " + constant.text() + " ± "
                        + constant.expandedText() + ", which "
                        + (constant.estimate().holds(truth) ? "holds it." : "does not hold it."));
            }
        }
        return lines;
    }

    private @Nullable Double truthOf() {
        return switch (prover) {
            case FLOW -> yard.pulsesPerL;
            case HEIGHT -> yard.aboveOutletM.get(sensor);
            // Half the runs slip by a hundredth.
            case SPEED -> yard.pulsesPerM * (1 - 0.005);
            default -> null;
        };
    }

    @Override
    public void close() throws IOException {
        yard.close();
    }
}
