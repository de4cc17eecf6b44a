package evenfall.bench.trap;

import evenfall.judge.AlertKind;
import evenfall.sim.world.TruthLog;
import j2html.TagCreator;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.hipparchus.stat.StatUtils;
import picocli.CommandLine;

/** Breaks every wall on purpose; {@code WallsTest} proves with it that its rules see what they forbid. */
final class Offender {
    private Offender() {}

    static String everythingForbidden(TruthLog truth) {
        double mean = StatUtils.mean(truth.rowCvByCell());
        return AlertKind.RATE_HIGH.word() + mean + new MqttMessage() + new CommandLine(new Object()) + TagCreator.br();
    }
}
