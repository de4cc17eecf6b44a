package evenfall.bench;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The walls between the bench's rooms: an allow-list for each, since a list of bans forgets. A trap in the test classes breaks each
 * rule on purpose, which proves that the rule bites.
 */
class WallsTest {
    private static final JavaClasses PRODUCT = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("evenfall.bench");
    private static final JavaClasses TRAP = new ClassFileImporter().importPackages("evenfall.bench.trap");

    private static final Set<String> TRUTH = Set.of(
            "evenfall.sim.world.TruthLog",
            "evenfall.sim.world.RearView",
            "evenfall.sim.world.TruthSample",
            "evenfall.sim.world.TruthSample$Segment",
            "evenfall.sim.world.RowLedger",
            "evenfall.sim.world.LineFigures",
            "evenfall.sim.world.RowFigures");

    private record Room(String name, String... mayUse) {}

    /** From the inside outwards. Names of the bench's own rooms begin with {@code bench.}; a room may use itself. */
    private static final List<Room> ROOMS = List.of(
            new Room("report", "quantity"),
            new Room("received"),
            new Room("broker", "bench.received"),
            new Room("live", "bench.received", "bench.report", "quantity"),
            new Room("pattern", "bench.report", "outlet", "pattern", "quantity"),
            new Room("page", "quantity"),
            new Room(
                    "choose",
                    "bench.page",
                    "bench.report",
                    "config",
                    "liquid",
                    "outlet",
                    "pattern",
                    "quantity",
                    "sim.jet"),
            new Room(
                    "replay",
                    "bench.received",
                    "bench.report",
                    "config",
                    "judge",
                    "message",
                    "monitor",
                    "quantity",
                    "replay",
                    "rig",
                    "trace",
                    "wire"),
            new Room("feed", "outlet", "rig", "sim.feed", "sim.scenario", "sim.world"),
            new Room(
                    "score",
                    "bench.received",
                    "liquid",
                    "outlet",
                    "pattern",
                    "quantity",
                    "rig",
                    "sim.fault",
                    "sim.ground",
                    "sim.scenario",
                    "sim.sensor",
                    "sim.world"),
            new Room(
                    "run",
                    "bench.broker",
                    "bench.received",
                    "bench.report",
                    "bench.score",
                    "config",
                    "judge",
                    "message",
                    "monitor",
                    "outlet",
                    "pattern",
                    "quantity",
                    "replay",
                    "rig",
                    "sense",
                    "sim.feed",
                    "sim.scenario",
                    "sim.world",
                    "trace",
                    "wire"),
            new Room(
                    "matrix",
                    "bench.report",
                    "bench.run",
                    "bench.score",
                    "config",
                    "outlet",
                    "quantity",
                    "sim.drive",
                    "sim.fault",
                    "sim.ground",
                    "sim.scenario"),
            new Room("reveal", "bench.report", "quantity", "sim.world"),
            new Room(
                    "console",
                    "bench.choose",
                    "bench.page",
                    "bench.report",
                    "bench.reveal",
                    "bench.workbench",
                    "config",
                    "judge",
                    "liquid",
                    "message",
                    "monitor",
                    "outlet",
                    "page",
                    "pattern",
                    "quantity",
                    "replay",
                    "rig",
                    "sense",
                    "sim.drive",
                    "sim.fault",
                    "sim.scenario",
                    "sim.world",
                    "trace"),
            new Room("compare", "bench.page", "bench.report", "bench.run", "bench.score", "quantity"),
            new Room(
                    "sheet",
                    "bench.page",
                    "bench.received",
                    "bench.run",
                    "bench.score",
                    "config",
                    "liquid",
                    "outlet",
                    "pattern",
                    "quantity",
                    "rig",
                    "sense"),
            new Room(
                    "study",
                    "bench.page",
                    "bench.run",
                    "bench.score",
                    "bench.sheet",
                    "config",
                    "liquid",
                    "outlet",
                    "quantity",
                    "sim.scenario"),
            new Room("prove.measure", "quantity"),
            new Room(
                    "prove.guide",
                    "bench.prove.measure",
                    "bench.report",
                    "liquid",
                    "outlet",
                    "quantity",
                    "rig",
                    "sense",
                    "wire"),
            new Room("prove.listen", "bench.prove.guide", "quantity", "rig", "serial", "wire"),
            new Room(
                    "prove.record",
                    "bench.prove.guide",
                    "bench.prove.measure",
                    "bench.report",
                    "config",
                    "rig",
                    "wire"),
            new Room(
                    "prove.talk",
                    "bench.prove.guide",
                    "bench.prove.listen",
                    "bench.prove.measure",
                    "bench.prove.record",
                    "bench.report",
                    "config",
                    "quantity"),
            new Room(
                    "prove.trial",
                    "bench.prove.guide",
                    "bench.prove.listen",
                    "bench.prove.measure",
                    "bench.prove.talk",
                    "bench.report",
                    "config",
                    "quantity",
                    "rig",
                    "sim.chance",
                    "sim.feed",
                    "sim.scenario",
                    "sim.sensor",
                    "sim.wire"),
            new Room(
                    "workbench",
                    "bench.prove.guide",
                    "bench.prove.listen",
                    "bench.prove.measure",
                    "bench.prove.record",
                    "bench.prove.trial",
                    "bench.report",
                    "bench.sheet",
                    "config",
                    "quantity",
                    "rig",
                    "sense",
                    "serial",
                    "wire"));

    private static ArchRule allowList(Room room) {
        String[] allowed = Stream.concat(Stream.of("bench." + room.name()), Stream.of(room.mayUse()))
                .map(name -> "evenfall." + name)
                .toArray(String[]::new);
        return classes()
                .that()
                .resideInAPackage("evenfall.bench." + room.name())
                .should()
                .onlyDependOnClassesThat(resideOutsideOfPackage("evenfall..").or(resideInAnyPackage(allowed)))
                .because("each room of the bench knows what it needs and no more");
    }

    private static ArchRule onlyIn(String library, String... rooms) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(rooms)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .because("a library stays in the room that needs it");
    }

    /** Rooms that are functions of what they are given. */
    private static ArchRule pure(String... rooms) {
        return classes()
                .that()
                .resideInAnyPackage(rooms)
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(
                        "evenfall..",
                        "java.lang",
                        "java.lang.annotation",
                        "java.lang.invoke",
                        "java.lang.runtime",
                        "java.math",
                        "java.util",
                        "java.util.function",
                        "java.util.regex",
                        "java.util.stream",
                        "org.hipparchus..",
                        "com.fasterxml.jackson.databind",
                        "com.fasterxml.jackson.databind.node",
                        "org.jspecify.annotations"))
                .because(
                        "a page or a terminal can lead a test only if it has no file, port, clock or thread of its own");
    }

    private static ArchRule truthIsReadIn(String... rooms) {
        return noClasses()
                .that()
                .resideOutsideOfPackages(rooms)
                .should()
                .accessTargetWhere(new DescribedPredicate<JavaAccess<?>>("the truth of a run") {
                    @Override
                    public boolean test(JavaAccess<?> access) {
                        return TRUTH.contains(access.getTargetOwner().getName());
                    }
                })
                .because("whoever could read the truth could show it as if the monitor had said it");
    }

    @TestFactory
    List<DynamicTest> everyRoomUsesOnlyWhatItsAllowListNames() {
        return ROOMS.stream()
                .map(room -> DynamicTest.dynamicTest(
                        room.name(), () -> allowList(room).check(PRODUCT)))
                .toList();
    }

    @Test
    void everyRoomButTheCommandLineHasAnAllowList() {
        Set<String> known = Set.copyOf(
                ROOMS.stream().map(room -> "evenfall.bench." + room.name()).toList());
        assertThat(PRODUCT.stream()
                        .map(c -> c.getPackageName())
                        .distinct()
                        .filter(name -> !name.equals("evenfall.bench.cli")))
                .allMatch(known::contains)
                .hasSameSizeAs(known);
    }

    @Test
    void onlyTheScoreAndTheTrainersFramesReadTheTruth() {
        truthIsReadIn("evenfall.bench.score", "evenfall.bench.reveal").check(PRODUCT);
    }

    @Test
    void librariesStayInTheirRooms() {
        onlyIn("org.apache.activemq..", "evenfall.bench.broker").check(PRODUCT);
        onlyIn("org.eclipse.paho..", "evenfall.bench.broker").check(PRODUCT);
        onlyIn("org.hipparchus..", "evenfall.bench.score", "evenfall.bench.study", "evenfall.bench.prove.measure")
                .check(PRODUCT);
        onlyIn("org.sqlite..", "evenfall.bench.study").check(PRODUCT);
        onlyIn("java.sql..", "evenfall.bench.study").check(PRODUCT);
        onlyIn("picocli..", "evenfall.bench.cli").check(PRODUCT);
        onlyIn(
                        "j2html..",
                        "evenfall.bench.page",
                        "evenfall.bench.choose",
                        "evenfall.bench.sheet",
                        "evenfall.bench.study")
                .check(PRODUCT);
        onlyIn("com.github.weisj..", "evenfall.bench.page").check(PRODUCT);
    }

    @Test
    void theProversThemselvesArePure() {
        pure("evenfall.bench.prove.measure", "evenfall.bench.prove.guide").check(PRODUCT);
    }

    @Test
    void roomsFormNoCircle() {
        slices().matching("evenfall.bench.(*)..").should().beFreeOfCycles().check(PRODUCT);
    }

    @Test
    void everyRuleBites() {
        assertThat(allowList(new Room("trap", "sim.world"))
                        .evaluate(TRAP)
                        .getFailureReport()
                        .getDetails())
                .anyMatch(line -> line.contains("evenfall.judge.AlertKind"))
                .noneMatch(line -> line.contains("calls method <evenfall.sim.world"));
        assertThat(pure("evenfall.bench.trap").evaluate(TRAP).hasViolation()).isTrue();
        assertThat(truthIsReadIn("evenfall.bench.score").evaluate(TRAP).hasViolation())
                .isTrue();
        assertThat(onlyIn("org.eclipse.paho..", "evenfall.bench.broker")
                        .evaluate(TRAP)
                        .hasViolation())
                .isTrue();
        assertThat(onlyIn("org.hipparchus..", "evenfall.bench.score")
                        .evaluate(TRAP)
                        .hasViolation())
                .isTrue();
        assertThat(onlyIn("picocli..", "evenfall.bench.cli").evaluate(TRAP).hasViolation())
                .isTrue();
        assertThat(onlyIn("j2html..", "evenfall.bench.page").evaluate(TRAP).hasViolation())
                .isTrue();
    }
}
