package evenfall.pattern;

/**
 * How far air lets a stream fly sideways, to first order. A stream flies whole up to its break-up length; from there on it is drops.
 *
 * <p>Break-up length by R. Grant and S. Middleman, AIChE Journal 12 (1966), from memory: {@code 19.5 d √We} for a laminar jet,
 * {@code 8.51 d We^0.32} for a turbulent one; between Reynolds numbers of 2,000 and 4,000 the logarithm of one goes over into that of the
 * other, evenly by the logarithm of the number. Our choice.
 *
 * <p>A whole stream lies along its own velocity u against the outlet, and the air blows across it at {@code w = v √(1 − e²)}, with v the
 * speed of travel and e the part of u that points to the rear. A cylinder across the wind, of coefficient 1.1 at Reynolds numbers
 * of 100 to 1,000 (from memory), is slowed by {@code k = 2 · 1.1 ρ_air w / (π ρ d)} per second against w. Resolved along u and across, that takes
 * the same part {@code k v e / u} per second of what u has to the side and of what it has downwards: nothing from a stream aimed down,
 * which is blown to the rear alone; from one thrown to the rear it takes a tenth, and lets it rise less.
 *
 * <p>A drop of diameter D that flies through air at w is slowed by {@code λ = ¾ C ρ_air w / (ρ D)} per second, so a speed across the way
 * carries it {@code u (1 − e^−λt) / λ} and not {@code u t}. D is 1.89 jet diameters (Lord Rayleigh, 1878, from memory), C that of a sphere
 * (L. Schiller and A. Naumann, 1933, from memory), w taken as it is in the middle of the flight. It falls more slowly too, and so
 * for longer: a stream aimed down lands almost where it would without air, one thrown to the rear falls short to the side.
 *
 * <p>Drops stray: by {@value #STRAY} of the way that they fly as drops, about 1°. Our choice.
 */
final class AirDrag {
    /** kg/m³ and Pa·s at 15 °C and sea level (International Standard Atmosphere, from memory). */
    private static final double AIR_KGPM3 = 1.225;

    private static final double AIR_PAS = 1.79e-5;
    private static final double WATER_KGPM3 = 1000;

    /** N/m; water 0.073, fertiliser a little less. Our choice. */
    private static final double TENSION_NPM = 0.07;

    /** Pa·s of water, and how many times that of a liquid of 1.28: 2.5, remembered of UAN 28. Our choice. */
    private static final double WATER_PAS = 1.0e-3;

    private static final double UAN_OVER_WATER = 2.5;
    private static final double LAMINAR_UP_TO_RE = 2000;
    private static final double TURBULENT_FROM_RE = 4000;
    private static final double DROP_OVER_JET = 1.89;
    private static final double CYLINDER = 1.1;

    /** Standard deviation over the way flown as drops. */
    private static final double STRAY = 0.02;

    /** Read between, the slowing is right to a ten-thousandth; a power for each stream at each moment would cost more than all else. */
    private static final double STEP_MPS = 0.1;

    private static final int STEPS = 400;

    /** Up to here eight terms of the series for {@code (1 − e^−x) / x} are right to 3e-6: the first left out is x⁸/9!. */
    private static final double SERIES_UP_TO = 1;

    private final double jetM;
    private final double dropM;
    private final double densityKgpM3;
    private final double wholeS;

    /** How much a drop is slowed per second, by its speed against the air in steps of {@link #STEP_MPS}. */
    private final double[] slowsPerS = new double[STEPS + 1];

    /** What the steps of {@link #carry} hand on, each as long as there are flights; means nothing between two calls. */
    private final double[] dropsS;

    private final double[] slowing;
    private final double[] carried;
    private final double[] endMps;
    private final double[] longS;

    /**
     * @param streamM3ps flow of the stream with water at the rated point, m³/s
     * @param exitMps its speed there, m/s
     * @param specificGravity of the product
     * @param flights how many are worked out at once
     */
    AirDrag(double streamM3ps, double exitMps, double specificGravity, int flights) {
        dropsS = new double[flights];
        slowing = new double[flights];
        carried = new double[flights];
        endMps = new double[flights];
        longS = new double[flights];
        jetM = Math.sqrt(4 * streamM3ps / (StrictMath.PI * exitMps));
        dropM = DROP_OVER_JET * jetM;
        densityKgpM3 = WATER_KGPM3 * specificGravity;
        double weber = densityKgpM3 * exitMps * exitMps * jetM / TENSION_NPM;
        double viscosityPas = WATER_PAS * StrictMath.pow(UAN_OVER_WATER, (specificGravity - 1) / 0.28);
        double reynolds = densityKgpM3 * exitMps * jetM / viscosityPas;
        double turbulent =
                StrictMath.log(reynolds / LAMINAR_UP_TO_RE) / StrictMath.log(TURBULENT_FROM_RE / LAMINAR_UP_TO_RE);
        turbulent = Math.max(0, Math.min(1, turbulent));
        double diameters = StrictMath.pow(19.5 * Math.sqrt(weber), 1 - turbulent)
                * StrictMath.pow(8.51 * StrictMath.pow(weber, 0.32), turbulent);
        // A faster jet is whole for longer and through sooner.
        wholeS = diameters * jetM / exitMps;
        for (int i = 0; i < slowsPerS.length; i++) {
            slowsPerS[i] = slowsPerS(i * STEP_MPS);
        }
    }

    /** {@code λ} of the class comment; at rest by the law of Stokes, to which C tends there. */
    private double slowsPerS(double againstMps) {
        if (!(againstMps > 0)) {
            return 18 * AIR_PAS / (densityKgpM3 * dropM * dropM);
        }
        double reynolds = AIR_KGPM3 * againstMps * dropM / AIR_PAS;
        double sphere = Math.max(0.42, 24 / reynolds * (1 + 0.15 * StrictMath.pow(reynolds, 0.687)));
        return 0.75 * sphere * AIR_KGPM3 * againstMps / (densityKgpM3 * dropM);
    }

    private double slowsAt(double againstMps) {
        double place = againstMps / STEP_MPS;
        int i = (int) place;
        if (i >= STEPS) {
            return slowsPerS(againstMps);
        }
        return slowsPerS[i] + (place - i) * (slowsPerS[i + 1] - slowsPerS[i]);
    }

    /** {@code (1 − e^−x) / x} by its series, for x from 0 to {@link #SERIES_UP_TO}. */
    private static double seriesPart(double x) {
        double sum = 1 - x * (1.0 / 8);
        sum = 1 - x * (1.0 / 7) * sum;
        sum = 1 - x * (1.0 / 6) * sum;
        sum = 1 - x * (1.0 / 5) * sum;
        sum = 1 - x * (1.0 / 4) * sum;
        sum = 1 - x * (1.0 / 3) * sum;
        return 1 - x * (1.0 / 2) * sum;
    }

    /**
     * How much of a stream's speed to the side and downwards the air takes while the stream is whole.
     *
     * @param backMps its speed to the rear against the outlet, m/s
     * @param exitMps its speed against the outlet, m/s, above 0
     * @param travelMps speed of travel, m/s
     * @return a part of 1
     */
    double takenFromWhole(double backMps, double exitMps, double travelMps) {
        double toRear = backMps / exitMps;
        double acrossMps = travelMps * Math.sqrt(1 - toRear * toRear);
        double perS = 2 * CYLINDER * AIR_KGPM3 * acrossMps / (StrictMath.PI * densityKgpM3 * jetM);
        return Math.min(1, wholeS * perS * toRear * travelMps / exitMps);
    }

    /**
     * Standard deviation of where the liquid of a stream lands about its middle, across its way: a round jet's own, and what its drops stray.
     *
     * @param flightS time in the air, s
     * @param meanMps mean speed against the outlet, m/s
     * @return m
     */
    double spreadM(double flightS, double meanMps) {
        double strayM = STRAY * meanMps * Math.max(0, flightS - wholeS);
        return Math.sqrt(jetM * jetM / 16 + strayM * strayM);
    }

    /**
     * For each flight the time for which a speed without drag would carry as far sideways. Step by step over all of them, with what is
     * seldom the case put right after each step: such plain loops run on a processor's vector instructions.
     *
     * @param carriesS time in the air without drag, s; becomes that time
     * @param downMps speed downwards at the hole, m/s
     * @param againstMps speed against the air, m/s
     * @param taken what {@link #takenFromWhole} says of all of them
     */
    void carry(double[] carriesS, double[] downMps, double[] againstMps, double taken) {
        double left = 1 - taken;
        int n = carriesS.length;
        for (int i = 0; i < n; i++) {
            dropsS[i] = carriesS[i] - wholeS;
        }
        for (int i = 0; i < n; i++) {
            slowing[i] = slowsAt(againstMps[i]);
        }
        fly(dropsS);
        for (int i = 0; i < n; i++) {
            double freeMps = downMps[i] + Flight.GRAVITY_MPS2 * wholeS;
            double fallMps = freeMps - taken * downMps[i];
            // What is still to fall where the stream breaks up.
            double freeM =
                    dropsS[i] * (freeMps + 0.5 * Flight.GRAVITY_MPS2 * dropsS[i]) + 0.5 * taken * downMps[i] * wholeS;
            double slowedM = fallMps * carried[i] + Flight.GRAVITY_MPS2 * (dropsS[i] - carried[i]) / slowing[i];
            endMps[i] = fallMps * (1 - slowing[i] * carried[i]) + Flight.GRAVITY_MPS2 * carried[i];
            // What falls more slowly falls for longer; one step of Newton's method finds how long.
            longS[i] = dropsS[i] + (freeM - slowedM) / endMps[i];
        }
        for (int i = 0; i < n; i++) {
            if (!(endMps[i] > 0)) {
                longS[i] = dropsS[i];
            }
        }
        fly(longS);
        for (int i = 0; i < n; i++) {
            // One that lands before it breaks up is slowed so little that it is not worth a question.
            if (dropsS[i] > 0) {
                carriesS[i] = wholeS * (1 - 0.5 * taken) + left * carried[i];
            }
        }
    }

    /** Fills {@link #carried}: {@code t (1 − e^−λt) / (λt)} after times t as drops. */
    private void fly(double[] timeS) {
        for (int i = 0; i < timeS.length; i++) {
            carried[i] = timeS[i] * seriesPart(slowing[i] * timeS[i]);
        }
        for (int i = 0; i < timeS.length; i++) {
            double x = slowing[i] * timeS[i];
            if (x > SERIES_UP_TO) {
                carried[i] = timeS[i] * (-StrictMath.expm1(-x) / x);
            }
        }
    }
}
