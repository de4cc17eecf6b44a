package evenfall.bench.prove.guide;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.prove.measure.Limit;
import evenfall.bench.prove.measure.Talker;
import evenfall.bench.report.Json;
import evenfall.bench.report.Paint;
import evenfall.bench.report.TextTable;
import evenfall.quantity.FixedDecimals;
import evenfall.rig.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Which ports there are, and what talks on each: what is done first at a machine. */
final class WiringScript implements Script {
    private static final int USUAL_BAUD = 115_200;
    private static final double LISTEN_S = 3;
    private static final double TRY_S = 1.5;

    /** In the order in which receivers and hubs are likely to be set; each is tried when only noise comes. */
    private static final List<Integer> BAUDS = List.of(115_200, 9_600, 4_800, 38_400, 57_600, 19_200, 230_400, 460_800);

    private static final Limit REJECTED = new Limit(
            "wiring-rejected",
            "sentences that came broken",
            1,
            "pct",
            "our choice: a sound line on a machine loses none");
    private static final Limit GAP = new Limit(
            "wiring-gap",
            "longest silence of a sentence",
            1.5,
            "s",
            "our choice: the hub says who it is once a second, all else more often");

    private static final Limit SPEAKS =
            new Limit("wiring-speaks", "missing: a port that speaks", 0, "ports", "something must talk");
    private static final Limit AS_IN_RIG =
            new Limit("wiring-as-in-rig", "ports unlike the rig file", 0, "ports", "the rig file");

    @Override
    public List<Limit> limits() {
        return List.of(REJECTED, GAP, SPEAKS, AS_IN_RIG);
    }

    private record Checked(
            String device,
            int baud,
            Recording.Line line,
            Talker talker,
            boolean otherBaud,
            @Nullable String wanted) {}

    @Override
    public Proof run(Dialogue dialogue, Setup setup) throws Turn {
        Cautions.wiring(dialogue);
        List<Checked> lines = new ArrayList<>();
        Recording.Ports ports = dialogue.ports();
        for (Recording.Port port : ports.found()) {
            lines.add(check(dialogue, setup, port.device(), "lines[" + (lines.size() + 1) + "]"));
        }
        return proof(dialogue, setup, ports, lines);
    }

    private static Checked check(Dialogue dialogue, Setup setup, String device, String key) throws Turn {
        Optional<Rig.Port> own = setup.rig()
                .flatMap(rig -> rig.ports().stream()
                        .filter(p -> p.device().equals(device))
                        .findFirst());
        int first = own.map(Rig.Port::baud).orElse(USUAL_BAUD);
        String wanted = setup.rig().isPresent() && own.isPresent()
                ? wanted(setup.rig().get(), own.get().name())
                : null;
        Recording.Line line = dialogue.line(key + ".heard", new Step.Listening(device, first, LISTEN_S));
        Talker talker = talker(line);
        if (talker != Talker.NOISE) {
            return new Checked(device, first, line, talker, false, wanted);
        }
        for (int baud : BAUDS) {
            if (baud != first) {
                Recording.Line other = dialogue.line(key + ".at_" + baud, new Step.Listening(device, baud, TRY_S));
                Talker there = talker(other);
                if (there.speaks()) {
                    return new Checked(device, baud, other, there, true, wanted);
                }
            }
        }
        return new Checked(device, first, line, talker, false, wanted);
    }

    private static Talker talker(Recording.Line line) {
        long hub = 0;
        long receiver = 0;
        for (Recording.KindHeard kind : line.kinds()) {
            if (kind.fromHub()) {
                hub += kind.sentences();
            } else {
                receiver += kind.sentences();
            }
        }
        return Talker.of(line.bytes(), hub, receiver, line.counts().ignored());
    }

    /** What the rig file says that talks on a port. */
    private static @Nullable String wanted(Rig rig, String port) {
        boolean hub = rig.sensors().flow().filter(f -> f.port().equals(port)).isPresent()
                || rig.sensors().wheel().filter(w -> w.port().equals(port)).isPresent()
                || rig.sensors().pressure().filter(p -> p.port().equals(port)).isPresent()
                || rig.sensors().heightsPort().filter(port::equals).isPresent();
        boolean receiver = rig.sensors().speedPort().filter(port::equals).isPresent();
        if (hub) {
            return receiver ? Talker.HUB_AND_RECEIVER.words() : Talker.HUB.words();
        }
        return receiver ? Talker.RECEIVER.words() : null;
    }

    private Proof proof(Dialogue dialogue, Setup setup, Recording.Ports ports, List<Checked> lines) {
        List<Finding> findings = new ArrayList<>();
        List<String> advice = new ArrayList<>();
        List<String> text = new ArrayList<>();
        ObjectNode result = Json.object();
        ArrayNode nodes = result.putArray("lines");
        Limit rejected = dialogue.limit(this, REJECTED.name());
        Limit gap = dialogue.limit(this, GAP.name());
        for (Checked one : lines) {
            text.add(one.device() + " at " + one.baud() + " baud: " + words(one));
            text.addAll(rates(one));
            nodes.add(node(one));
            double share = rejectedPct(one.line());
            double longest = longestGapS(one.line());
            if (one.talker().speaks()) {
                findings.add(of(one, rejected).judge(share));
                if (!one.line().kinds().isEmpty()) {
                    findings.add(of(one, gap).judge(longest));
                }
            }
            advise(one, advice, findings);
        }
        boolean anyone = lines.stream().anyMatch(l -> l.talker().speaks());
        findings.add(dialogue.limit(this, SPEAKS.name()).judge(anyone ? 0 : 1));
        missing(setup, lines, advice, findings);
        if (ports.found().isEmpty()) {
            text.add("This computer has no serial port.");
            advice.add(
                    "Plug in the hub or the receiver, wait five seconds, and try again; or name the port with --port.");
        }
        return new Proof(
                "wiring",
                findings,
                List.of(),
                result,
                List.of("Each port was opened and heard for " + Dialogue.plain(LISTEN_S)
                        + " s; nothing was sent. Where only noise came, other baud rates were tried for "
                        + Dialogue.plain(TRY_S) + " s each."),
                text,
                advice);
    }

    private static Limit of(Checked one, Limit limit) {
        return new Limit(
                limit.name(), one.device() + ": " + limit.title(), limit.value(), limit.unit(), limit.source());
    }

    private static String words(Checked one) {
        String refused = one.line().refused();
        if (refused != null) {
            return "not heard, " + refused;
        }
        return one.talker().words() + (one.otherBaud() ? " (the baud rate is not the expected one)" : "");
    }

    private static List<String> rates(Checked one) {
        if (one.line().counts().sentences() == 0) {
            return List.of();
        }
        TextTable table = new TextTable(Paint.OFF, 1, "sentence", "a second", "longest gap s");
        for (Recording.KindHeard kind : one.line().kinds()) {
            table.row(
                    kind.name(),
                    FixedDecimals.text(kind.sentences() / one.line().seconds(), 1),
                    FixedDecimals.text(kind.longestGapS(), 2));
        }
        List<String> lines = new ArrayList<>(table.lines());
        lines.add("  " + one.line().counts().accepted() + " accepted, "
                + one.line().counts().ignored() + " of kinds not in use, "
                + one.line().counts().rejected() + " broken ("
                + one.line().counts().rejectedChecksum() + " checksum, "
                + one.line().counts().rejectedMalformed() + " malformed, "
                + one.line().counts().rejectedTooLong() + " too long)");
        return lines;
    }

    private static double rejectedPct(Recording.Line line) {
        long sentences = line.counts().sentences();
        return sentences == 0 ? 0 : 100.0 * line.counts().rejected() / sentences;
    }

    private static double longestGapS(Recording.Line line) {
        double longest = 0;
        for (Recording.KindHeard kind : line.kinds()) {
            longest = Math.max(longest, kind.longestGapS());
        }
        return longest;
    }

    private static void advise(Checked one, List<String> advice, List<Finding> findings) {
        String wanted = one.wanted();
        if (one.otherBaud()) {
            advice.add(one.device() + ": write baud: " + one.baud()
                    + " in the rig file, or set the device to another rate.");
        }
        if (wanted != null && !one.talker().words().equals(wanted)) {
            findings.add(AS_IN_RIG.judge(1));
            advice.add(one.device() + ": the rig file wants " + wanted + " here.");
        }
        if (one.line().refused() != null) {
            return;
        }
        switch (one.talker()) {
            case NOISE ->
                advice.add(one.device() + ": no baud rate makes sense of it. Another device, or two wires swapped?");
            case SILENT -> advice.add(one.device() + ": check power and cable; swap receive and transmit.");
            case UNKNOWN -> advice.add(one.device() + ": a receiver must send RMC; switch that sentence on.");
            default -> {
                if (rejectedPct(one.line()) > 0) {
                    advice.add(one.device()
                            + ": broken sentences. Look for a loose plug, a missing ground, a lead beside a motor.");
                }
            }
        }
    }

    private static void missing(Setup setup, List<Checked> lines, List<String> advice, List<Finding> findings) {
        if (setup.rig().isEmpty()) {
            return;
        }
        for (Rig.Port port : setup.rig().get().ports()) {
            if (lines.stream().noneMatch(l -> l.device().equals(port.device()))) {
                findings.add(AS_IN_RIG.judge(1));
                advice.add("The rig's port " + port.name() + ", " + port.device() + ", was not heard.");
            }
        }
    }

    private static ObjectNode node(Checked one) {
        ObjectNode node = Json.object();
        node.put("device", one.device());
        node.put("baud", one.baud());
        node.put("refused", one.line().refused());
        node.put("talks", one.line().refused() == null ? one.talker().name().toLowerCase(java.util.Locale.ROOT) : null);
        node.put("other_baud_than_expected", one.otherBaud());
        node.put("rig_wants", one.wanted());
        Facts.number(node, "seconds", one.line().seconds());
        node.put("bytes", one.line().bytes());
        node.put("accepted", one.line().counts().accepted());
        node.put("ignored", one.line().counts().ignored());
        ObjectNode broken = node.putObject("rejected");
        broken.put("checksum", one.line().counts().rejectedChecksum());
        broken.put("malformed", one.line().counts().rejectedMalformed());
        broken.put("too_long", one.line().counts().rejectedTooLong());
        node.put("hub_boot_count", one.line().bootCount());
        ArrayNode kinds = node.putArray("sentences");
        for (Recording.KindHeard kind : one.line().kinds()) {
            ObjectNode k = kinds.addObject();
            k.put("kind", kind.name());
            Facts.number(k, "per_s", kind.sentences() / one.line().seconds());
            Facts.number(k, "longest_gap_s", kind.longestGapS());
        }
        return node;
    }
}
