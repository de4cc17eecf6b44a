package evenfall.bench.run;

import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.received.ReportedMoment;
import evenfall.bench.received.WireTally;
import evenfall.judge.Alert;
import evenfall.monitor.Live;
import evenfall.monitor.Outputs;
import evenfall.quantity.TradeUnits;
import evenfall.rig.Rig;
import evenfall.sense.Quantity;
import evenfall.wire.WireCounts;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the core says, taken down without the way through messages. */
final class CoreReport implements Outputs {
    private static final double US_PER_S = 1e6;
    private static final double PERCENT = 100;

    private final Rig rig;
    private final List<ReportedMoment> moments = new ArrayList<>();
    private final List<ReportedAlert> alerts = new ArrayList<>();

    CoreReport(Rig rig) {
        this.rig = rig;
    }

    @Override
    public void live(Live live) {
        List<ReportedMoment.Height> heights = new ArrayList<>();
        for (int i = 0; i < live.sensorHeightM().size(); i++) {
            heights.add(new ReportedMoment.Height(
                    rig.sensors().heights().get(i).rightM(),
                    live.sensorHeightM().get(i).value()));
        }
        double atS = live.timeUs() / US_PER_S;
        moments.add(new ReportedMoment(
                atS,
                atS,
                live.speedMps().value(),
                live.flowM3ps().value(),
                live.pressurePa().value(),
                times(live.rateM(), 1 / TradeUnits.LPHA_M),
                rig.target().rateM() / TradeUnits.LPHA_M,
                times(live.rateError(), PERCENT),
                live.boom().rows() == null ? null : live.boom().rows().rowCv(),
                live.widthM().value(),
                segmentM(live, "left"),
                segmentM(live, "right"),
                List.copyOf(heights),
                List.of()));
    }

    private static @Nullable Double times(Quantity quantity, double factor) {
        Double value = quantity.value();
        return value == null ? null : value * factor;
    }

    private static @Nullable Double segmentM(Live live, String name) {
        for (Live.Segment segment : live.segments()) {
            if (segment.name().equals(name)) {
                return segment.heightM().value();
            }
        }
        return null;
    }

    @Override
    public void raised(Alert alert) {
        alerts.add(new ReportedAlert(
                alert.kind().word(),
                alert.place(),
                alert.sinceUs() / US_PER_S,
                alert.raisedUs() / US_PER_S,
                null,
                alert.value(),
                alert.limit(),
                alert.unit(),
                alert.why(),
                alert.act()));
    }

    @Override
    public void cleared(Alert alert, long clearedUs) {
        for (int i = alerts.size() - 1; i >= 0; i--) {
            ReportedAlert known = alerts.get(i);
            if (known.kind().equals(alert.kind().word())
                    && known.place().equals(alert.place())
                    && known.clearedS() == null) {
                alerts.set(i, known.cleared(clearedUs / US_PER_S));
                return;
            }
        }
    }

    Report report(WireCounts wire) {
        return new Report(
                moments,
                alerts,
                new WireTally(
                        wire.sentences(),
                        wire.accepted(),
                        wire.ignored(),
                        wire.rejectedChecksum(),
                        wire.rejectedMalformed(),
                        wire.rejectedTooLong()),
                0);
    }
}
