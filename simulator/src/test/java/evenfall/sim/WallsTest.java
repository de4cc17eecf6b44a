package evenfall.sim;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The walls between the simulator's rooms, and the one between it and what it is there to test. A trap in the test classes breaks each
 * rule on purpose, which proves that the rule bites.
 */
class WallsTest {
    private static final JavaClasses PRODUCT = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("evenfall.sim");
    private static final JavaClasses TRAP = new ClassFileImporter().importPackages("evenfall.sim.trap");

    /** Of the controller, the simulator may use what describes a machine and a liquid, and the reading of files. */
    private static final List<String> OF_THE_CONTROLLER =
            List.of("evenfall.config", "evenfall.liquid", "evenfall.outlet", "evenfall.quantity", "evenfall.rig");

    /** What each room may use beside itself and the plain JDK; rooms of the controller stand with their full name. */
    private record Room(String name, String... mayUse) {}

    private static final List<Room> PURE = List.of(
            new Room("chance"),
            new Room("ground", "chance", "org.hipparchus.transform"),
            new Room("vehicle", "ground"),
            new Room("drive", "vehicle"),
            new Room("boom", "ground", "vehicle"),
            new Room(
                    "jet",
                    "evenfall.liquid",
                    "evenfall.outlet",
                    "org.hipparchus",
                    "org.hipparchus.analysis",
                    "org.hipparchus.analysis.solvers",
                    "org.hipparchus.ode",
                    "org.hipparchus.ode.events",
                    "org.hipparchus.ode.nonstiff",
                    "org.hipparchus.ode.sampling"),
            new Room("plumbing", "chance", "evenfall.liquid", "evenfall.outlet", "evenfall.rig"),
            new Room("wire", "chance", "evenfall.quantity"),
            new Room("sensor", "chance", "wire"),
            new Room(
                    "fault",
                    "boom",
                    "chance",
                    "plumbing",
                    "sensor",
                    "vehicle",
                    "wire",
                    "evenfall.config",
                    "evenfall.quantity"),
            new Room(
                    "world",
                    "boom",
                    "chance",
                    "drive",
                    "fault",
                    "ground",
                    "jet",
                    "plumbing",
                    "scenario",
                    "sensor",
                    "vehicle",
                    "wire",
                    "evenfall.liquid",
                    "evenfall.outlet",
                    "evenfall.rig"));

    private static final String[] PURE_PACKAGES =
            PURE.stream().map(room -> "evenfall.sim." + room.name()).toArray(String[]::new);

    private static ArchRule allowList(Room room) {
        List<String> allowed = new ArrayList<>(List.of(
                "evenfall.sim." + room.name(),
                "java.lang",
                "java.lang.annotation",
                "java.lang.invoke",
                "java.lang.runtime",
                "java.nio.charset",
                "java.time",
                "java.util",
                "java.util.function",
                "java.util.stream",
                "org.jspecify.annotations"));
        for (String other : room.mayUse()) {
            allowed.add(other.contains(".") ? other : "evenfall.sim." + other);
        }
        return ArchRuleDefinition.classes()
                .that()
                .resideInAPackage("evenfall.sim." + room.name())
                .should()
                .onlyDependOnClassesThat(JavaClass.Predicates.resideInAnyPackage(allowed.toArray(String[]::new)))
                .because("the model is pure: the same scenario and seed give the same bytes, and " + room.name()
                        + " knows only what it is made of");
    }

    private static ArchRule ownEyes(String packages) {
        DescribedPredicate<JavaClass> underTest = JavaClass.Predicates.resideInAPackage("evenfall..")
                .and(DescribedPredicate.not(JavaClass.Predicates.resideInAPackage("evenfall.sim..")))
                .and(DescribedPredicate.not(
                        JavaClass.Predicates.resideInAnyPackage(OF_THE_CONTROLLER.toArray(String[]::new))))
                .as("the code under test");
        return noClasses()
                .that()
                .resideInAPackage(packages)
                .should()
                .dependOnClassesThat(underTest)
                .because("truth computed or written by the code under test would hide its faults:"
                        + " two codecs and two landings are wanted");
    }

    private static ArchRule noClockNoChance(String... packages) {
        return noClasses()
                .that()
                .resideInAnyPackage(packages)
                .should()
                .accessTargetWhere(calls(
                        "a clock, a sleep or an unseeded chance",
                        Set.of(
                                "java.lang.System.nanoTime",
                                "java.lang.System.currentTimeMillis",
                                "java.lang.Thread.sleep",
                                "java.lang.Math.random",
                                "java.util.Random.<init>",
                                "java.util.UUID.randomUUID",
                                "java.time.Instant.now",
                                "java.time.LocalDate.now")))
                .because("a run is a function of its scenario and its seed");
    }

    private static ArchRule onlyExactMath(String... packages) {
        Set<String> exact = Set.of(
                "sqrt", "abs", "min", "max", "floor", "ceil", "rint", "round", "floorMod", "floorDiv", "copySign");
        return noClasses()
                .that()
                .resideInAnyPackage(packages)
                .should()
                .accessTargetWhere(
                        new DescribedPredicate<JavaAccess<?>>("a function of Math that differs between machines") {
                            @Override
                            public boolean test(JavaAccess<?> access) {
                                return access.getTargetOwner().getName().equals("java.lang.Math")
                                        && access instanceof JavaMethodCall
                                        && !exact.contains(access.getName());
                            }
                        })
                .because("a scenario gives the same bytes on any machine; StrictMath does, Math does not");
    }

    private static DescribedPredicate<JavaAccess<?>> calls(String what, Set<String> targets) {
        return new DescribedPredicate<>(what) {
            @Override
            public boolean test(JavaAccess<?> access) {
                return targets.contains(access.getTargetOwner().getName() + "." + access.getName());
            }
        };
    }

    @TestFactory
    List<DynamicTest> everyPureRoomUsesOnlyWhatItsAllowListNames() {
        return PURE.stream()
                .map(room -> DynamicTest.dynamicTest(
                        room.name(), () -> allowList(room).check(PRODUCT)))
                .toList();
    }

    @Test
    void nothingOfTheCodeUnderTestIsUsed() {
        ownEyes("evenfall.sim..").check(PRODUCT);
    }

    @Test
    void theModelHasNoClockAndNoUnseededChance() {
        noClockNoChance(PURE_PACKAGES).check(PRODUCT);
        noClockNoChance("evenfall.sim.scenario", "evenfall.sim.elevation").check(PRODUCT);
    }

    @Test
    void theModelUsesExactMathematics() {
        onlyExactMath(PURE_PACKAGES).check(PRODUCT);
        onlyExactMath("evenfall.sim.scenario", "evenfall.sim.elevation").check(PRODUCT);
    }

    @Test
    void onlyTheFeedTouchesDevicesThreadsAndFiles() {
        noClasses()
                .that()
                .resideInAPackage("evenfall.sim..")
                .and()
                .resideOutsideOfPackages("evenfall.sim.feed", "evenfall.sim.scenario", "evenfall.sim.elevation")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "com.sun.jna..", "com.fazecast..", "java.io..", "java.nio.file..", "java.util.concurrent..")
                .because(
                        "one room touches the machine that this runs on; scenarios and surveyed heights are read in two others")
                .check(PRODUCT);
    }

    @Test
    void roomsFormNoCircle() {
        slices().matching("evenfall.sim.(*)..").should().beFreeOfCycles().check(PRODUCT);
    }

    @Test
    void everyRuleBites() {
        assertThat(details(allowList(new Room("trap", "ground"))))
                .anyMatch(line -> line.contains("evenfall.rig.BoomLayout"))
                .anyMatch(line -> line.contains("evenfall.pattern.Flight"))
                .noneMatch(line -> line.contains("evenfall.sim.ground"));
        assertThat(details(ownEyes("evenfall.sim.trap")))
                .anyMatch(line -> line.contains("evenfall.pattern.Flight"))
                .noneMatch(line -> line.contains("evenfall.rig.BoomLayout"));
        assertThat(details(noClockNoChance("evenfall.sim.trap")))
                .anyMatch(line -> line.contains("nanoTime"))
                .anyMatch(line -> line.contains("java.util.Random"));
        assertThat(details(onlyExactMath("evenfall.sim.trap")))
                .anyMatch(line -> line.contains("Math.sin"))
                .noneMatch(line -> line.contains("Math.sqrt"));
    }

    private static List<String> details(ArchRule rule) {
        return rule.evaluate(TRAP).getFailureReport().getDetails();
    }
}
