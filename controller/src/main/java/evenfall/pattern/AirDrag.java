package evenfall.pattern;

/**
 * How far air lets a stream fly sideways, to first order. A stream flies whole, and air does little to it sideways, up to its break-up
 * length; from there on it is drops.
 *
 * <p>Break-up length by R. Grant and S. Middleman, AIChE Journal 12 (1966), from memory: {@code 19.5 d √We} for a laminar jet,
 * {@code 8.51 d We^0.32} for a turbulent one; the change from one to the other is put at a Reynolds number of 2,800, between 2,000 and 4,000.
 *
 * <p>A drop of diameter D that flies through air at w is slowed by {@code λ = ¾ C ρ_air w / (ρ D)} per second, so a speed across the way
 * carries it {@code u (1 − e^−λt) / λ} and not {@code u t}. D is 1.89 jet diameters (Lord Rayleigh, 1878, from memory), C that of a sphere
 * (L. Schiller and A. Naumann, 1933, from memory), w taken as it is in the middle of the flight. It falls more slowly too, and so for
 * longer: a stream aimed down lands almost where it would without air, one thrown to the rear falls short to the side.
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
    private static final double TURBULENT_FROM_RE = 2800;
    private static final double DROP_OVER_JET = 1.89;

    /** Read between, the slowing is right to a ten-thousandth; a power for each stream at each moment would cost more than all else. */
    private static final double STEP_MPS = 0.1;

    private static final int STEPS = 400;

    /** Up to here seven terms of the series for {@code (1 − e^−x) / x} are right to 3e-5: the first left out is x⁸/9!. */
    private static final double SERIES_UP_TO = 1;

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
        double jetM = Math.sqrt(4 * streamM3ps / (StrictMath.PI * exitMps));
        dropM = DROP_OVER_JET * jetM;
        densityKgpM3 = WATER_KGPM3 * specificGravity;
        double weber = densityKgpM3 * exitMps * exitMps * jetM / TENSION_NPM;
        double viscosityPas = WATER_PAS * StrictMath.pow(UAN_OVER_WATER, (specificGravity - 1) / 0.28);
        double reynolds = densityKgpM3 * exitMps * jetM / viscosityPas;
        double diameters = reynolds < TURBULENT_FROM_RE ? 19.5 * Math.sqrt(weber) : 8.51 * StrictMath.pow(weber, 0.32);
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
     * For each flight the time for which a speed without drag would carry as far sideways. Step by step over all of them, with what is
     * seldom the case put right after each step: such plain loops run on a processor's vector instructions.
     *
     * @param carriesS time in the air without drag, s; becomes that time
     * @param downMps speed downwards at the hole, m/s
     * @param againstMps speed against the air, m/s
     */
    void carry(double[] carriesS, double[] downMps, double[] againstMps) {
        int n = carriesS.length;
        for (int i = 0; i < n; i++) {
            dropsS[i] = carriesS[i] - wholeS;
        }
        for (int i = 0; i < n; i++) {
            slowing[i] = slowsAt(againstMps[i]);
        }
        fly(dropsS);
        for (int i = 0; i < n; i++) {
            double fallMps = downMps[i] + Flight.GRAVITY_MPS2 * wholeS;
            double freeM = dropsS[i] * (fallMps + 0.5 * Flight.GRAVITY_MPS2 * dropsS[i]);
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
            // A stream that lands before it breaks up has met no drag.
            if (dropsS[i] > 0) {
                carriesS[i] = wholeS + carried[i];
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
