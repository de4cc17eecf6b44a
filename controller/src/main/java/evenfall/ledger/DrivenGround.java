package evenfall.ledger;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cells of earlier passes, each in its own place and direction, and what they put on the ground under a new one. A ring of bounded size:
 * when it is full the oldest cell goes, and is counted.
 *
 * <p>A row of the new cell is looked for in the cells that lie abreast of it; of one pass the nearest counts, and between that cell's rows
 * the amount goes by a straight line, which keeps the sum.
 */
final class DrivenGround {
    /** Room for all cells together. On a 36 m boom over rows of 0.19 m it holds about 3,400 cells, 6.8 km of way. Our choice. */
    private static final int ROOM_BYTES = 4 << 20;

    /** Beside the arrays of a cell, roughly. */
    private static final int OTHER_BYTES = 96;

    private static final int BYTES_A_ROW = Float.BYTES + 1;

    /** Cells of one pass may gape by as much as fixes scatter; so a row a little off a cell's end still counts as abreast. */
    private static final double ABREAST_LENGTHS = 0.75;

    private final int rows;
    private final double rowM;
    private final double firstRightM;
    private final int capacity;
    private final double[] eastM;
    private final double[] northM;
    private final double[] east;
    private final double[] north;
    private final double[] lengthM;
    private final int[] pass;
    private final List<Strip> strips = new ArrayList<>();
    private int next;
    private long forgotten;

    private final double[] addedPerM;
    private final GroundState[] latest;
    private final double[] nearestM;
    private final int[] nearest;
    private final double[] place;

    /**
     * @param rows how many rows a cell has, those beside the boom among them
     * @param rowM row spacing, m
     * @param firstRightM place of the first, m right of the centre line
     */
    DrivenGround(int rows, double rowM, double firstRightM) {
        this.rows = rows;
        this.rowM = rowM;
        this.firstRightM = firstRightM;
        capacity = Math.max(16, ROOM_BYTES / (rows * BYTES_A_ROW + OTHER_BYTES));
        eastM = new double[capacity];
        northM = new double[capacity];
        east = new double[capacity];
        north = new double[capacity];
        lengthM = new double[capacity];
        pass = new int[capacity];
        addedPerM = new double[rows];
        latest = new GroundState[rows];
        nearestM = new double[rows];
        nearest = new int[rows];
        place = new double[rows];
        Arrays.fill(nearest, -1);
        Arrays.fill(nearestM, Double.MAX_VALUE);
        clear();
    }

    private void clear() {
        for (int j = 0; j < rows; j++) {
            addedPerM[j] = 0;
            latest[j] = GroundState.NONE;
        }
    }

    /** What a cell's rows got from its pass, m³ on a metre of way (NaN where not known), and what they were left as. */
    @SuppressWarnings("ArrayRecordComponent")
    private record Strip(float[] perM, byte[] states) {}

    /** Where a cell lies: its middle on the plane, m, and its course, rad from north. */
    record Spot(double eastM, double northM, double courseRad) {}

    /**
     * Remembers a cell.
     *
     * @param rowM3 what the pass itself put on each row, m³; NaN where that is not known
     * @param state {@linkplain GroundState#code codes} of what it left them as
     */
    void keep(int passNumber, Spot spot, double cellM, double[] rowM3, byte[] state) {
        if (strips.size() < capacity) {
            strips.add(new Strip(new float[rows], new byte[rows]));
        } else {
            forgotten++;
        }
        Strip strip = strips.get(next);
        for (int j = 0; j < rows; j++) {
            strip.perM[j] = (float) (rowM3[j] / cellM);
        }
        System.arraycopy(state, 0, strip.states, 0, rows);
        eastM[next] = spot.eastM();
        northM[next] = spot.northM();
        east[next] = StrictMath.sin(spot.courseRad());
        north[next] = StrictMath.cos(spot.courseRad());
        lengthM[next] = cellM;
        pass[next] = passNumber;
        next = (next + 1) % capacity;
    }

    /** Looks what earlier passes did under a cell; then {@link #addedPerM} and {@link #latest} tell. */
    void look(int passNumber, Spot spot) {
        clear();
        double sin = StrictMath.sin(spot.courseRad());
        double cos = StrictMath.cos(spot.courseRad());
        double farM = 2 * Math.abs(firstRightM) + 2 * rowM;
        int group = -1;
        for (int age = strips.size(); age >= 1; age--) {
            // Without a remainder: this is asked of every cell that is kept.
            int k = next - age;
            k += k < 0 ? capacity : 0;
            double offEastM = spot.eastM() - eastM[k];
            double offNorthM = spot.northM() - northM[k];
            if (pass[k] == passNumber
                    || offEastM * offEastM + offNorthM * offNorthM > (farM + lengthM[k]) * (farM + lengthM[k])) {
                continue;
            }
            double alongM = offEastM * east[k] + offNorthM * north[k];
            // How the new cell's rows run in the old one's frame.
            double alongARow = cos * east[k] - sin * north[k];
            double rightARow = cos * north[k] + sin * east[k];
            double limitM = ABREAST_LENGTHS * lengthM[k];
            if (Math.abs(alongM) - Math.abs(firstRightM * alongARow) > limitM) {
                continue;
            }
            if (pass[k] != group) {
                addGroup();
                group = pass[k];
            }
            double rightM = offEastM * north[k] - offNorthM * east[k];
            for (int j = 0; j < rows; j++) {
                double atM = firstRightM + j * rowM;
                double a = Math.abs(alongM + atM * alongARow);
                if (a <= limitM && a < nearestM[j]) {
                    double r = (rightM + atM * rightARow - firstRightM) / rowM;
                    if (r >= 0 && r <= rows - 1) {
                        nearestM[j] = a;
                        nearest[j] = k;
                        place[j] = r;
                    }
                }
            }
        }
        addGroup();
    }

    /** Adds what the nearest cells of one pass hold, and makes ready for the next pass. */
    private void addGroup() {
        for (int j = 0; j < rows; j++) {
            int k = nearest[j];
            if (k >= 0) {
                add(j, place[j], strips.get(k));
            }
            nearest[j] = -1;
            nearestM[j] = Double.MAX_VALUE;
        }
    }

    private void add(int j, double at, Strip strip) {
        int left = (int) at;
        double toRight = at - left;
        addedPerM[j] += (1 - toRight) * strip.perM[left];
        if (toRight > 0) {
            addedPerM[j] += toRight * strip.perM[left + 1];
        }
        GroundState there = GroundState.ofCode(strip.states[toRight < 0.5 ? left : left + 1]);
        if (there != GroundState.NONE) {
            latest[j] = there;
        }
    }

    /** What earlier passes put on a row, m³ on a metre of way; NaN where it is not known. */
    double addedPerM(int row) {
        return addedPerM[row];
    }

    /** What the latest pass that treated this ground left it as; NONE where none did. */
    GroundState latest(int row) {
        return latest[row];
    }

    int kept() {
        return strips.size();
    }

    long forgotten() {
        return forgotten;
    }
}
