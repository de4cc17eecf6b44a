package evenfall.bench.prove.guide;

import static org.assertj.core.api.Assertions.assertThat;

import evenfall.config.ConfigException;
import evenfall.wire.WireCounts;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class WiringGuideTest {
    private static Recording.Line hub() {
        return new Recording.Line(
                null,
                3,
                4000,
                new WireCounts(91, 90, 0, 1, 0, 0, 0, 0),
                List.of(
                        new Recording.KindHeard("PEVFH heights (5)", true, 60, 0.06),
                        new Recording.KindHeard("PEVFI hub", true, 3, 1.0)),
                4L);
    }

    private static Recording.Line receiver() {
        return new Recording.Line(
                null,
                1.5,
                3000,
                new WireCounts(30, 20, 10, 0, 0, 0, 0, 0),
                List.of(new Recording.KindHeard("RMC", false, 15, 0.11)),
                null);
    }

    private static Recording.Line noise() {
        return new Recording.Line(null, 3, 800, new WireCounts(2, 0, 0, 0, 2, 0, 9, 700), List.of(), null);
    }

    private static Recording.Line silent() {
        return new Recording.Line(null, 3, 0, WireCounts.NONE, List.of(), null);
    }

    private static Recording.Ports ports(String... devices) {
        return new Recording.Ports(List.of(devices).stream()
                .map(d -> new Recording.Port(d, "a port"))
                .toList());
    }

    @Test
    void eachLineIsNamedByWhatTalksOnIt() {
        Walk walk = new Walk(Prover.WIRING, Optional.empty());
        walk.heard("ports", ports("/dev/a", "/dev/b", "/dev/c", "/dev/d"));
        walk.heard("lines[1].heard", hub());
        walk.heard("lines[2].heard", noise()).heard("lines[2].at_9600", receiver());
        walk.heard("lines[3].heard", silent());
        walk.heard("lines[4].heard", Recording.Line.refused("/dev/d is in use by another program"));
        Proof proof = walk.proof();
        assertThat(proof.result().path("lines"))
                .extracting(
                        l -> l.path("talks").isNull() ? null : l.path("talks").asText())
                .containsExactly("hub", "receiver", "silent", null);
        assertThat(proof.result().path("lines").path(1).path("baud").asInt()).isEqualTo(9600);
        // One sentence of 91 is broken.
        assertThat(proof.findings())
                .filteredOn(f -> !f.met())
                .extracting(f -> f.limit().name())
                .containsExactly("wiring-rejected");
        assertThat(proof.advice()).anyMatch(a -> a.contains("/dev/b: write baud: 9600"));
        assertThat(proof.lines()).anyMatch(l -> l.contains("/dev/d") && l.contains("in use by another program"));
    }

    @Test
    void noiseIsTriedAtEveryBaudRateAndThenNamed() {
        Walk walk = new Walk(Prover.WIRING, Optional.empty())
                .heard("ports", ports("/dev/a"))
                .heard("lines[1].heard", noise());
        for (int baud : new int[] {9600, 4800, 38400, 57600, 19200, 230400, 460800}) {
            walk.heard("lines[1].at_" + baud, noise());
        }
        Proof proof = walk.proof();
        assertThat(proof.passed()).isFalse();
        assertThat(proof.result().path("lines").path(0).path("talks").asText()).isEqualTo("noise");
    }

    @Test
    void aRigWhosePortsAreSwappedIsToldSo() throws ConfigException {
        Walk walk = new Walk(Prover.WIRING, Optional.of(FlowGuideTest.rig()));
        walk.heard("ports", ports("/dev/ttyUSB0", "/dev/ttyUSB1"));
        walk.heard("lines[1].heard", receiver()).heard("lines[2].heard", hub());
        Proof proof = walk.proof();
        assertThat(proof.findings())
                .filteredOn(f -> f.limit().name().equals("wiring-as-in-rig"))
                .hasSize(2);
        assertThat(proof.advice()).anyMatch(a -> a.equals("/dev/ttyUSB0: the rig file wants the sensor hub here."));
    }

    @Test
    void withoutAPortItSaysWhatToDo() {
        Proof proof = new Walk(Prover.WIRING, Optional.empty())
                .heard("ports", ports())
                .proof();
        assertThat(proof.passed()).isFalse();
        assertThat(proof.advice()).anyMatch(a -> a.contains("Plug in"));
    }
}
