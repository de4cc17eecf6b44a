package evenfall.bench.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenfall.bench.received.Message;
import evenfall.bench.received.Report;
import evenfall.bench.received.ReportedAlert;
import evenfall.bench.report.Json;
import evenfall.bench.score.Course;
import evenfall.bench.score.Figures;
import evenfall.bench.score.GroundMap;
import evenfall.bench.score.ScoredAlert;
import evenfall.config.ConfigException;
import evenfall.config.FileCheck;
import evenfall.rig.Rig;
import evenfall.rig.RigFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * The folder of a kept run, from which a sheet can be drawn later: rig file and messages as they were, and the truth with its score,
 * which is written here. The truth stands in a file of its own, so that whoever replays the rest does not meet it.
 */
public final class KeptRun {
    private static final String RIG = "rig.yaml";
    private static final String MESSAGES = "messages.txt";
    private static final String TRUTH = "truth.json.gz";
    private static final String ALLOWED = "a folder written by evenfall run --keep";
    private static final int FORM = 1;

    /** An hour of driving unpacks to a tenth of this. */
    private static final int LARGEST_B = 200_000_000;

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private KeptRun() {}

    /** Adds the truth to the folder of a run that was kept. */
    public static void addTruth(Path folder, RunRecord run) throws IOException {
        ObjectNode root = Json.object();
        root.put("form", FORM);
        root.put("scenario", run.scenario());
        root.put("title", run.title());
        root.put("notes", run.notes());
        root.put("seed", run.seed());
        root.set("seconds", Json.number(run.seconds(), 3));
        root.put("pace", run.pace().name().toLowerCase(Locale.ROOT));
        root.set("truth", figures(run.truth()));
        root.set("reported", figures(run.reported()));
        root.set("below_80_share", Json.number(run.below80Share(), 5));
        root.set("above_120_share", Json.number(run.above120Share(), 5));
        ArrayNode alerts = root.putArray("alerts");
        run.alerts().forEach(alert -> alerts.add(alert(alert)));
        root.set("course", course(run.course()));
        root.set("ground", ground(run.ground()));
        ArrayNode remarks = root.putArray("remarks");
        run.remarks().forEach(remarks::add);
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(folder.resolve(TRUTH)))) {
            out.write(JSON.writeValueAsBytes(root));
        }
    }

    private static ObjectNode figures(Figures figures) {
        ObjectNode node = Json.object();
        node.set("rate_error_mean_pct", Json.number(figures.rateErrorMeanPct(), 4));
        node.set("rate_error_p95_abs_pct", Json.number(figures.rateErrorP95AbsPct(), 4));
        node.set("row_cv_mean", Json.number(figures.rowCvMean(), 6));
        node.set("row_cv_p95", Json.number(figures.rowCvP95(), 6));
        return node;
    }

    private static ObjectNode alert(ScoredAlert alert) {
        ObjectNode node = Json.object();
        node.put("kind", alert.kind());
        node.put("place", alert.place());
        node.put("verdict", alert.verdict().name());
        node.set("due_s", Json.number(alert.dueS(), 3));
        ReportedAlert said = alert.raised();
        if (said != null) {
            ObjectNode raised = node.putObject("raised");
            raised.set("since_s", Json.number(said.sinceS(), 3));
            raised.set("raised_s", Json.number(said.raisedS(), 3));
            raised.set("cleared_s", Json.number(said.clearedS(), 3));
            raised.set("value", Json.number(said.value(), 6));
            raised.set("limit", Json.number(said.limit(), 6));
            raised.put("unit", said.unit());
            raised.put("why", said.why());
            raised.put("act", said.act());
        }
        return node;
    }

    private static ObjectNode course(Course course) {
        ObjectNode node = Json.object();
        column(node, course, "at_s", 3, Course.Moment::atS);
        column(node, course, "at_m", 3, Course.Moment::atM);
        column(node, course, "speed_mps", 4, Course.Moment::speedMps);
        column(node, course, "left_tip_m", 4, Course.Moment::leftTipM);
        column(node, course, "centre_m", 4, Course.Moment::centreM);
        column(node, course, "right_tip_m", 4, Course.Moment::rightTipM);
        column(node, course, "lowest_m", 3, Course.Moment::lowestM);
        column(node, course, "highest_m", 3, Course.Moment::highestM);
        column(node, course, "rate_error_pct", 3, Course.Moment::rateErrorPct);
        column(node, course, "row_cv", 5, Course.Moment::rowCv);
        return node;
    }

    private static void column(
            ObjectNode node, Course course, String name, int decimals, Function<Course.Moment, @Nullable Double> of) {
        ArrayNode column = node.putArray(name);
        course.moments().forEach(moment -> column.add(Json.number(of.apply(moment), decimals)));
    }

    private static ObjectNode ground(GroundMap map) {
        ObjectNode node = Json.object();
        ArrayNode cells = node.putArray("cell_from_m");
        for (int cell = 0; cell < map.cells(); cell++) {
            cells.add(Json.number(map.cellFromM(cell), 2));
        }
        ArrayNode rows = node.putArray("row_right_m");
        for (int row = 0; row < map.rows(); row++) {
            rows.add(Json.number(map.rowRightM(row), 4));
        }
        ArrayNode shares = node.putArray("share_of_mean");
        for (int cell = 0; cell < map.cells(); cell++) {
            for (int row = 0; row < map.rows(); row++) {
                shares.add(Json.number(map.share(cell, row), 4));
            }
        }
        return node;
    }

    /**
     * @param folder as {@link #addTruth} left it
     * @throws ConfigException where it is no such folder, or a file in it is not what was written
     */
    public static RunRecord read(Path folder) throws ConfigException {
        if (!Files.isDirectory(folder)) {
            throw new ConfigException(
                    folder.toString(),
                    0,
                    null,
                    Files.exists(folder) ? "is no folder" : "there is no such folder",
                    ALLOWED);
        }
        for (String name : List.of(RIG, MESSAGES, TRUTH)) {
            if (!Files.isRegularFile(folder.resolve(name))) {
                throw new ConfigException(folder.toString(), 0, null, "holds no file " + name, ALLOWED);
            }
        }
        Rig rig = RigFile.read(folder.resolve(RIG));
        JsonNode root = truth(folder.resolve(TRUTH));
        Pace pace = root.path("pace").asText().equals("real") ? Pace.REAL : Pace.MAX;
        double seconds = root.path("seconds").asDouble();
        List<Message> messages = messages(folder.resolve(MESSAGES));
        try {
            Report report = pace == Pace.REAL ? Report.of(messages) : Report.onOneClock(messages);
            List<ScoredAlert> alerts = new ArrayList<>();
            for (JsonNode alert : root.path("alerts")) {
                alerts.add(alert(alert));
            }
            List<String> remarks = new ArrayList<>();
            root.path("remarks").forEach(remark -> remarks.add(remark.asText()));
            return new RunRecord(
                    root.path("scenario").asText(),
                    root.path("title").asText(),
                    root.path("notes").asText(),
                    root.path("seed").asLong(),
                    seconds,
                    pace,
                    rig,
                    figures(root.path("truth")),
                    figures(root.path("reported")),
                    number(root.path("below_80_share")),
                    number(root.path("above_120_share")),
                    alerts,
                    course(root.path("course")),
                    ground(root.path("ground")),
                    report.until(seconds),
                    remarks);
        } catch (IOException e) {
            throw wrong(folder.resolve(MESSAGES), "holds a message that is not JSON");
        } catch (IllegalArgumentException e) {
            throw wrong(folder.resolve(TRUTH), "does not hold what was written");
        }
    }

    private static JsonNode truth(Path file) throws ConfigException {
        try (InputStream in = new GZIPInputStream(Files.newInputStream(file))) {
            byte[] bytes = in.readNBytes(LARGEST_B + 1);
            if (bytes.length > LARGEST_B) {
                throw wrong(file, "is larger than any run");
            }
            JsonNode root = JSON.readTree(bytes);
            if (root.path("form").asInt() != FORM) {
                throw wrong(file, "has another form than this program writes");
            }
            return root;
        } catch (IOException e) {
            throw wrong(
                    file,
                    "cannot be read (" + FileCheck.reason(e).lines().findFirst().orElse("") + ")");
        }
    }

    private static List<Message> messages(Path file) throws ConfigException {
        List<Message> messages = new ArrayList<>();
        int line = 0;
        try (BufferedReader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            for (String text = in.readLine(); text != null; text = in.readLine()) {
                line++;
                String[] parts = text.split(" ", 3);
                if (parts.length < 3) {
                    throw new ConfigException(
                            file.toString(), line, null, "is no message", "arrival in µs, topic and payload");
                }
                messages.add(new Message(Long.parseLong(parts[0]), parts[1], parts[2]));
            }
        } catch (IOException e) {
            throw wrong(file, "cannot be read (" + FileCheck.reason(e) + ")");
        } catch (NumberFormatException e) {
            throw new ConfigException(file.toString(), line, null, "has no time of arrival", "a whole number of µs");
        }
        return messages;
    }

    private static ConfigException wrong(Path file, String wrong) {
        return new ConfigException(file.toString(), 0, null, wrong, ALLOWED);
    }

    private static Figures figures(JsonNode node) {
        return new Figures(
                number(node.path("rate_error_mean_pct")),
                number(node.path("rate_error_p95_abs_pct")),
                number(node.path("row_cv_mean")),
                number(node.path("row_cv_p95")));
    }

    private static ScoredAlert alert(JsonNode node) {
        String kind = node.path("kind").asText();
        String place = node.path("place").asText();
        JsonNode said = node.path("raised");
        ReportedAlert raised = said.isMissingNode()
                ? null
                : new ReportedAlert(
                        kind,
                        place,
                        said.path("since_s").asDouble(),
                        said.path("raised_s").asDouble(),
                        number(said.path("cleared_s")),
                        number(said.path("value")),
                        number(said.path("limit")),
                        said.path("unit").asText(),
                        said.path("why").asText(),
                        said.path("act").asText());
        return new ScoredAlert(
                kind,
                place,
                number(node.path("due_s")),
                raised,
                ScoredAlert.Verdict.valueOf(node.path("verdict").asText()),
                null);
    }

    private static Course course(JsonNode node) {
        List<Course.Moment> moments = new ArrayList<>();
        for (int i = 0; i < node.path("at_s").size(); i++) {
            moments.add(new Course.Moment(
                    known(node, "at_s", i),
                    known(node, "at_m", i),
                    known(node, "speed_mps", i),
                    known(node, "left_tip_m", i),
                    known(node, "centre_m", i),
                    known(node, "right_tip_m", i),
                    known(node, "lowest_m", i),
                    known(node, "highest_m", i),
                    number(node.path("rate_error_pct").path(i)),
                    number(node.path("row_cv").path(i))));
        }
        return new Course(moments);
    }

    private static double known(JsonNode node, String column, int row) {
        JsonNode number = node.path(column).path(row);
        if (!number.isNumber()) {
            throw new IllegalArgumentException(column + " ends early");
        }
        return number.asDouble();
    }

    private static GroundMap ground(JsonNode node) {
        JsonNode shares = node.path("share_of_mean");
        float[] share = new float[shares.size()];
        for (int i = 0; i < share.length; i++) {
            share[i] = (float) shares.path(i).asDouble();
        }
        return GroundMap.kept(doubles(node.path("cell_from_m")), doubles(node.path("row_right_m")), share);
    }

    private static double[] doubles(JsonNode array) {
        double[] values = new double[array.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = array.path(i).asDouble();
        }
        return values;
    }

    private static @Nullable Double number(JsonNode node) {
        return node.isNumber() ? node.asDouble() : null;
    }
}
