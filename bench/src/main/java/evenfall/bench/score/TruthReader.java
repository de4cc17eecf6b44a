package evenfall.bench.score;

import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.TruthLog;
import evenfall.sim.world.TruthSample;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Takes out of the truth log what scoring needs. */
final class TruthReader {
    private final BoomLayout boom;
    private final Rig belief;
    private final HeightBands bands;
    private final double outerFromM;

    TruthReader(Scenario scenario) {
        this.boom = scenario.world().fitted().boom();
        this.belief = scenario.belief();
        this.bands = new HeightBands(scenario.world().fitted(), belief);
        this.outerFromM = boom.hingeM() + 0.5 * (0.5 * boom.widthM() - boom.hingeM());
    }

    List<TruthMoment> moments(TruthLog log) {
        List<TruthMoment> moments = new ArrayList<>();
        for (TruthSample sample : log.samples()) {
            moments.add(moment(sample));
        }
        return moments;
    }

    private TruthMoment moment(TruthSample sample) {
        double halfM = 0.5 * boom.widthM();
        double hingeM = boom.hingeM();
        HeightBands.Band band = bands.at(sample.pressurePa());
        OptionalDouble rateError = sample.rateError();
        return new TruthMoment(
                sample.timeUs() / 1e6,
                sample.speedMps(),
                rateError.isPresent() ? rateError.getAsDouble() : null,
                meanHeightM(sample, -halfM, -outerFromM),
                meanHeightM(sample, outerFromM, halfM),
                band.lowestM(),
                band.highestM(),
                belief.target().heightM(),
                stretch(sample, -halfM, halfM),
                stretch(sample, -hingeM, halfM),
                stretch(sample, -halfM, hingeM),
                stretch(sample, -hingeM, hingeM));
    }

    private TruthMoment.Stretch stretch(TruthSample sample, double fromM, double toM) {
        return new TruthMoment.Stretch(rowCv(sample, fromM, toM), meanHeightM(sample, fromM, toM));
    }

    private double meanHeightM(TruthSample sample, double fromM, double toM) {
        double sum = 0;
        int n = 0;
        for (int outlet = 0; outlet < sample.outlets(); outlet++) {
            double atM = boom.outletRightM(outlet);
            if (atM >= fromM && atM <= toM) {
                sum += sample.heightM(outlet);
                n++;
            }
        }
        // A stretch without outlets cannot be too low or too high; the target height says just that.
        return n == 0 ? belief.target().heightM() : sum / n;
    }

    /** Sample standard deviation (n − 1) over mean of the rows in a stretch; null for fewer than two, or where nothing falls. */
    private static @Nullable Double rowCv(TruthSample sample, double fromM, double toM) {
        double sum = 0;
        int n = 0;
        for (int row = 0; row < sample.rows(); row++) {
            if (sample.rowRightM(row) >= fromM && sample.rowRightM(row) <= toM) {
                sum += sample.rowAmount(row);
                n++;
            }
        }
        if (n < 2 || !(sum > 0)) {
            return null;
        }
        double mean = sum / n;
        double squares = 0;
        for (int row = 0; row < sample.rows(); row++) {
            if (sample.rowRightM(row) >= fromM && sample.rowRightM(row) <= toM) {
                double off = sample.rowAmount(row) - mean;
                squares += off * off;
            }
        }
        return Math.sqrt(squares / (n - 1)) / mean;
    }
}
