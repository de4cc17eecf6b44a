package evenfall.bench.score;

import evenfall.rig.BoomLayout;
import evenfall.rig.Rig;
import evenfall.sim.scenario.FittedSpec;
import evenfall.sim.scenario.Scenario;
import evenfall.sim.world.LineFigures;
import evenfall.sim.world.TruthSample;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Takes out of the truth what scoring needs, as it comes. */
final class TruthReader {
    private final BoomLayout boom;
    private final FittedSpec fitted;
    private final Rig belief;
    private final double targetRateM;
    private final HeightBands bands;
    private final LinesAtTarget lines;
    private final double outerFromM;
    private final long allSections;

    TruthReader(Scenario scenario) {
        this.fitted = scenario.world().fitted();
        this.boom = fitted.boom();
        this.belief = scenario.belief();
        this.targetRateM = scenario.world().targetRateM();
        this.bands = new HeightBands(fitted, belief);
        this.lines = LinesAtTarget.of(fitted, belief.target().heightM());
        this.outerFromM = boom.hingeM() + 0.5 * (0.5 * boom.widthM() - boom.hingeM());
        this.allSections = (1L << boom.sections().size()) - 1;
    }

    /**
     * @param tips how low both tips have been since the sample before
     */
    TruthMoment moment(TruthSample sample, Tips.Lowest tips) {
        double halfM = 0.5 * boom.widthM();
        double hingeM = boom.hingeM();
        HeightBands.Band band = bands.at(sample.pressurePa());
        OptionalDouble rateError = sample.rateError();
        return new TruthMoment(
                sample.timeUs() / 1e6,
                sample.speedMps(),
                rateError.isPresent() ? rateError.getAsDouble() : null,
                sample.boom().rows().isPresent() ? sample.boom().rows().get().rowCv() : null,
                meanHeightM(sample, -halfM, -outerFromM),
                meanHeightM(sample, outerFromM, halfM),
                band.lowestM(),
                band.highestM(),
                belief.target().heightM(),
                stretch(sample, -halfM, halfM),
                stretch(sample, -hingeM, halfM),
                stretch(sample, -halfM, hingeM),
                stretch(sample, -hingeM, hingeM),
                flows(sample),
                new TruthMoment.Heights(
                        meanHeightM(sample, -halfM, -hingeM),
                        meanHeightM(sample, hingeM, halfM),
                        tips.leftM(),
                        tips.rightM(),
                        sensorHeights(sample)));
    }

    /**
     * @param moment the same, as it is scored
     */
    Course.Moment along(TruthSample sample, TruthMoment moment) {
        Double error = moment.rateError();
        return new Course.Moment(
                moment.atS(),
                sample.xM(),
                moment.speedMps(),
                sample.heightM(0),
                meanHeightM(sample, -boom.hingeM(), boom.hingeM()),
                sample.heightM(sample.outlets() - 1),
                moment.lowestM(),
                moment.highestM(),
                error == null ? null : 100 * error,
                moment.rowCv());
    }

    private TruthMoment.Flows flows(TruthSample sample) {
        return new TruthMoment.Flows(
                sample.flowM3ps(),
                sample.meterM3ps(),
                sample.feedPressurePa(),
                sample.widthOnM(),
                sample.sectionMask(),
                targetRateM * sample.speedMps() * sample.widthOnM(),
                targetRateM * ScoringRules.MACHINE_MPS * boom.widthM());
    }

    private TruthMoment.Stretch stretch(TruthSample sample, double fromM, double toM) {
        double rowCv = rowCv(sample, fromM, toM);
        boolean whole = sample.sectionMask() == allSections;
        double flow = 0;
        double doubled = 0;
        double widestM = 0;
        for (TruthSample.Segment segment : sample.segments()) {
            if (whole && liesIn(segment.name(), fromM, toM)) {
                LineFigures figures = segment.lines();
                flow += figures.flowM3ps();
                doubled += figures.doubledM3ps();
                widestM = Math.max(widestM, figures.widestGapM());
            }
        }
        return new TruthMoment.Stretch(
                Double.isNaN(rowCv) ? null : rowCv,
                flow > 0 ? doubled / flow - lines.doubledShare() : null,
                flow > 0 ? widestM / lines.widestGapM() : null);
    }

    private boolean liesIn(String segment, double fromM, double toM) {
        return switch (segment) {
            case "left" -> fromM < -boom.hingeM();
            case "right" -> toM > boom.hingeM();
            default -> true;
        };
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

    /** Between the two outlets beside each sensor, on a straight line; beyond the last outlet as there. */
    private List<Double> sensorHeights(TruthSample sample) {
        List<Double> heights = new ArrayList<>();
        for (FittedSpec.Height sensor : fitted.heights()) {
            double at = Math.max(
                    0, Math.min(sample.outlets() - 1, (sensor.rightM() - boom.outletRightM(0)) / boom.spacingM()));
            int below = Math.min((int) at, Math.max(0, sample.outlets() - 2));
            int above = Math.min(below + 1, sample.outlets() - 1);
            double part = at - below;
            heights.add((1 - part) * sample.heightM(below) + part * sample.heightM(above));
        }
        return heights;
    }

    /**
     * Sample standard deviation (n − 1) over mean of the rows in a stretch, but for those that a switched-off section feeds or would
     * feed; not a number for fewer than two, or where nothing falls.
     */
    private double rowCv(TruthSample sample, double fromM, double toM) {
        boolean[] counts = new boolean[sample.rows()];
        double sum = 0;
        int n = 0;
        for (int row = 0; row < sample.rows(); row++) {
            double atM = sample.rowRightM(row);
            counts[row] = atM >= fromM && atM <= toM && isFed(atM, sample.sectionMask());
            if (counts[row]) {
                sum += sample.rowAmount(row);
                n++;
            }
        }
        if (n < 2 || !(sum > 0)) {
            return Double.NaN;
        }
        double mean = sum / n;
        double squares = 0;
        for (int row = 0; row < sample.rows(); row++) {
            if (counts[row]) {
                double off = sample.rowAmount(row) - mean;
                squares += off * off;
            }
        }
        return Math.sqrt(squares / (n - 1)) / mean;
    }

    /** Whether no section is off that reaches within a spacing of this place: further than any stream of its neighbours goes. */
    private boolean isFed(double atM, long mask) {
        if (mask == allSections) {
            return true;
        }
        for (int s = 0; s < boom.sections().size(); s++) {
            if ((mask >>> s & 1) == 0) {
                BoomLayout.Section section = boom.sections().get(s);
                double leftM = boom.outletRightM(section.firstOutlet()) - 1.5 * boom.spacingM();
                double rightM = boom.outletRightM(section.endOutlet() - 1) + 1.5 * boom.spacingM();
                if (atM > leftM && atM < rightM) {
                    return false;
                }
            }
        }
        return true;
    }
}
