package evenfall.sim.jet;

/**
 * Where the streams of a boom fell at one moment, or at several, one after the other. Made once, filled again and again by
 * {@link BoomFlight#land}; all arrays are {@code [stream][moment · outlets + outlet]}, are the object's own and are meant to be read in
 * place.
 */
public final class Landings {
    final int outlets;
    final int streams;
    final int moments;
    final double[][] rightM;
    final double[][] backM;
    final double[][] sigmaM;
    final double[][] quantity;

    /**
     * @param outlets how many on the boom
     * @param streams how many on each
     */
    public Landings(int outlets, int streams) {
        this(outlets, streams, 1);
    }

    /**
     * @param outlets how many on the boom
     * @param streams how many on each
     * @param moments for how many moments there is room
     */
    public Landings(int outlets, int streams, int moments) {
        this.outlets = outlets;
        this.streams = streams;
        this.moments = moments;
        rightM = new double[streams][outlets * moments];
        backM = new double[streams][outlets * moments];
        sigmaM = new double[streams][outlets * moments];
        quantity = new double[streams][outlets * moments];
    }

    /** How many outlets there are. */
    public int outlets() {
        return outlets;
    }

    /** How many streams each has. */
    public int streams() {
        return streams;
    }

    /** m right of the boom's centre line. */
    public double[][] rightM() {
        return rightM;
    }

    /**
     * m behind the place on the ground over which the outlet was when the liquid left it; negative where it is carried ahead. Add
     * {@code travel speed × time} for the way back from where the outlet is at another time.
     */
    public double[][] backM() {
        return backM;
    }

    /** Spread across the rows, standard deviation, m. */
    public double[][] sigmaM() {
        return sigmaM;
    }

    /** What its outlet was given as its quantity times the share of the stream; 0 for a shut outlet, whose places mean nothing. */
    public double[][] quantity() {
        return quantity;
    }
}
