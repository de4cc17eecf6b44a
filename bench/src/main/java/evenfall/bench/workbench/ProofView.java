package evenfall.bench.workbench;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.prove.guide.Constant;
import evenfall.bench.prove.guide.Guide;
import evenfall.bench.prove.guide.Proof;
import evenfall.bench.prove.guide.Recording;
import evenfall.bench.prove.guide.Reply;
import evenfall.bench.prove.guide.Step;
import evenfall.bench.prove.measure.Finding;
import evenfall.bench.report.Json;
import evenfall.quantity.FixedDecimals;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A test as JSON for its page. */
final class ProofView {
    private static final int DECIMALS = 6;

    private ProofView() {}

    /** {@code prover}, {@code number}, {@code notes}, {@code cautions}, {@code given} and {@code step}. */
    static void trail(ObjectNode json, List<Guide> trail) {
        Guide now = trail.get(trail.size() - 1);
        json.put("prover", now.prover().word());
        json.put("number", trail.size() - 1);
        List<String> first = trail.get(0).notes();
        first.forEach(json.putArray("cautions")::add);
        json.put("caution_now", matters(now.step(), trail.size() == 1));
        (trail.size() == 1 ? List.<String>of() : now.notes()).forEach(json.putArray("notes")::add);
        ArrayNode given = json.putArray("given");
        for (int i = 0; i < now.given().size(); i++) {
            ObjectNode one = given.addObject();
            one.put("words", words(trail.get(i).step()));
            one.put("text", text(now.given().get(i).reply()));
        }
        step(json.putObject("step"), now.step());
    }

    /** Where liquid runs, somebody drives, or somebody stands at the boom: there the cautions are shown again. */
    private static boolean matters(Step step, boolean isFirst) {
        boolean works = step instanceof Step.Measure measure
                && !(measure.signal() instanceof Step.Listing || measure.signal() instanceof Step.Listening);
        boolean catches = step.key().equals("catches[1]") || step.key().equals("repeats[1]");
        return isFirst || works || catches;
    }

    private static String words(Step step) {
        if (step instanceof Step.Ask ask) {
            return ask.words();
        }
        if (step instanceof Step.More more) {
            return more.words();
        }
        return step instanceof Step.Measure measure ? measure.words() : "";
    }

    /** A reply in a few words. */
    static String text(Reply reply) {
        if (reply instanceof Reply.Typed typed) {
            return typed.text();
        }
        Recording recording = ((Reply.Heard) reply).recording();
        if (recording instanceof Recording.Count count) {
            String pulses = count.pulses() == null ? "" : count.pulses() + " pulses";
            Double metres = count.metres();
            String driven = metres == null ? "" : FixedDecimals.text(metres, 1) + " m";
            return (pulses + " " + driven).strip() + " in " + FixedDecimals.text(count.seconds(), 1) + " s";
        }
        if (recording instanceof Recording.Echoes echoes) {
            return echoes.looks().size() + " looks";
        }
        if (recording instanceof Recording.Ports ports) {
            return ports.found().size() == 1 ? "1 port" : ports.found().size() + " ports";
        }
        Recording.Line line = (Recording.Line) recording;
        String refused = line.refused();
        return refused != null
                ? refused
                : line.bytes() + " bytes, " + line.counts().accepted() + " sentences, "
                        + line.counts().rejected() + " broken";
    }

    private static void step(ObjectNode json, Step step) {
        json.put("key", step.key());
        json.put("words", words(step));
        if (step instanceof Step.Ask ask) {
            json.put("type", "ask");
            json.put("usual", ask.usual());
            json.put("example", ask.example());
            ask.choices().forEach(json.putArray("choices")::add);
            ArrayNode units = json.putArray("units");
            if (ask.kind() != null) {
                List.of(ask.kind().unitNames().split(", ")).forEach(units::add);
            }
        } else if (step instanceof Step.More more) {
            json.put("type", "more");
            json.put("usual", more.usual());
        } else if (step instanceof Step.Measure measure) {
            json.put("type", "measure");
            json.put("example", measure.example());
            json.put("signal", counted(measure.signal()));
        } else {
            json.put("type", "finished");
        }
    }

    /** What a signal's amount counts. */
    static String counted(Step.Signal signal) {
        if (signal instanceof Step.Counting counting) {
            return counting == Step.Counting.RECEIVER ? "metres" : "pulses";
        }
        return signal instanceof Step.Echoing ? "looks" : signal instanceof Step.Listening ? "bytes" : "ports";
    }

    /** {@code passed}, {@code findings}, {@code constants}, {@code lines}, {@code advice} and {@code file}. */
    static void result(ObjectNode json, Proof proof, @Nullable String file) {
        json.put("passed", proof.passed());
        ArrayNode findings = json.putArray("findings");
        for (Finding finding : proof.findings()) {
            ObjectNode one = findings.addObject();
            one.put("title", finding.limit().title());
            one.put("met", finding.met());
            one.set("measured", Json.number(finding.measured(), DECIMALS));
            one.set("at_most", Json.number(finding.limit().value(), DECIMALS));
            one.put("unit", finding.limit().unit());
            one.put("source", finding.limit().source());
        }
        ArrayNode constants = json.putArray("constants");
        for (Constant constant : proof.constants()) {
            ObjectNode one = constants.addObject();
            one.put("of", constant.of());
            one.put("key", constant.key());
            one.put("text", constant.text());
            one.put("expanded", constant.expandedText());
            one.put("rig_place", constant.rigPlace());
        }
        proof.lines().forEach(json.putArray("lines")::add);
        proof.advice().forEach(json.putArray("advice")::add);
        json.put("file", file);
    }
}
