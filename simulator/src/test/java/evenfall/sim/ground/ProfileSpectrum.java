package evenfall.sim.ground;

import org.hipparchus.transform.DftNormalization;
import org.hipparchus.transform.FastFourierTransformer;
import org.hipparchus.transform.TransformType;

/**
 * One-sided displacement spectrum of straight profiles by Welch's method (P. Welch, IEEE Trans. Audio
 * Electroacoust. 15(2), 1967): segments of 4096 points 0.1 m apart, half overlapping, Hann window.
 */
final class ProfileSpectrum {

    static final double STEP_M = 0.1;
    static final int SEGMENT = 4096;
    static final double BIN_CPM = 1.0 / (SEGMENT * STEP_M);

    /** Density at k · BIN_CPM, m³. */
    final double[] densityM3 = new double[SEGMENT / 2];

    static ProfileSpectrum along(Ground ground, double directionRad, int lines, int segmentsPerLine) {
        ProfileSpectrum spectrum = new ProfileSpectrum();
        double[] window = new double[SEGMENT];
        double power = 0;
        for (int i = 0; i < SEGMENT; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / SEGMENT);
            power += window[i] * window[i];
        }
        double cos = Math.cos(directionRad);
        double sin = Math.sin(directionRad);
        for (int line = 0; line < lines; line++) {
            double asideM = 31.7 * line;
            for (int s = 0; s < segmentsPerLine; s++) {
                double[][] data = new double[2][SEGMENT];
                double mean = 0;
                for (int i = 0; i < SEGMENT; i++) {
                    double t = (s * (SEGMENT / 2) + i) * STEP_M;
                    data[0][i] = ground.heightM(t * cos - asideM * sin, t * sin + asideM * cos);
                    mean += data[0][i] / SEGMENT;
                }
                for (int i = 0; i < SEGMENT; i++) {
                    data[0][i] = (data[0][i] - mean) * window[i];
                }
                FastFourierTransformer.transformInPlace(data, DftNormalization.STANDARD, TransformType.FORWARD);
                for (int k = 0; k < SEGMENT / 2; k++) {
                    double square = data[0][k] * data[0][k] + data[1][k] * data[1][k];
                    spectrum.densityM3[k] += 2 * square * STEP_M / power / (lines * segmentsPerLine);
                }
            }
        }
        return spectrum;
    }

    /** Mean density over the band, m³. */
    double meanM3(double lowCpm, double highCpm) {
        int from = (int) Math.ceil(lowCpm / BIN_CPM);
        int to = (int) Math.floor(highCpm / BIN_CPM);
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += densityM3[k];
        }
        return sum / (to - from + 1);
    }

    /** Root mean square of the profile in the band, m. */
    double rmsM(double lowCpm, double highCpm) {
        int from = (int) Math.round(lowCpm / BIN_CPM);
        int to = (int) Math.round(highCpm / BIN_CPM);
        double sum = 0;
        for (int k = from; k < to; k++) {
            sum += densityM3[k] * BIN_CPM;
        }
        return Math.sqrt(sum);
    }

    /** Slope of log density over log frequency, by least squares over third-octave bands. */
    double slope(double lowCpm, double highCpm) {
        double ratio = Math.cbrt(2);
        int n = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        for (double low = lowCpm; low * ratio <= highCpm; low *= ratio) {
            int from = (int) Math.ceil(low / BIN_CPM);
            int to = (int) Math.floor(low * ratio / BIN_CPM);
            double meanLog = 0;
            for (int k = from; k <= to; k++) {
                meanLog += Math.log(k * BIN_CPM) / (to - from + 1);
            }
            double y = Math.log(meanM3(low, low * ratio));
            n++;
            sx += meanLog;
            sy += y;
            sxx += meanLog * meanLog;
            sxy += meanLog * y;
        }
        return (n * sxy - sx * sy) / (n * sxx - sx * sx);
    }
}
