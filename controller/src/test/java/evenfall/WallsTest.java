package evenfall;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.nio.ByteOrder;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The walls between the controller's rooms. Each pure package has an allow-list, since a list of bans forgets; a trap in the test
 * classes breaks each rule on purpose, which proves that the rule bites.
 */
class WallsTest {
    private static final JavaClasses PRODUCT = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("evenfall");
    private static final JavaClasses TRAP = new ClassFileImporter().importPackages("evenfall.trap");

    private record Room(String name, String... mayUse) {}

    /** From the inside outwards; every room may use itself, the plain JDK and the annotations. */
    private static final List<Room> PURE = List.of(
            new Room("quantity"),
            new Room("liquid"),
            new Room("pattern", "outlet", "rig"),
            new Room("wire"),
            new Room("sense", "rig"),
            new Room("detect"),
            new Room("judge", "detect", "liquid", "outlet", "pattern", "quantity", "rig", "sense"),
            new Room("ledger", "liquid", "outlet", "pattern", "rig", "sense"),
            new Room("monitor", "judge", "ledger", "liquid", "outlet", "pattern", "rig", "sense", "trace", "wire"));

    private static ArchRule allowList(Room room) {
        String[] allowed = new String[room.mayUse().length + 4];
        allowed[0] = "evenfall." + room.name();
        allowed[1] = "java.lang";
        allowed[2] = "java.util";
        allowed[3] = "org.jspecify.annotations";
        for (int i = 0; i < room.mayUse().length; i++) {
            allowed[i + 4] = "evenfall." + room.mayUse()[i];
        }
        return classes()
                .that()
                .resideInAPackage("evenfall." + room.name())
                .should()
                .onlyDependOnClassesThat(resideInAPackage("java.util.function")
                        .or(resideInAPackage("java.util.stream"))
                        .or(resideInAPackage("java.lang.runtime"))
                        .or(resideInAPackage("java.lang.invoke"))
                        // A word for which byte of a number comes first; nothing of it reaches outside.
                        .or(belongToAnyOf(ByteOrder.class))
                        .or(resideInAPackage("java.lang.annotation"))
                        .or(com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage(allowed)))
                .because("the core is pure: no file, socket, clock, thread, logger or library reaches into "
                        + room.name());
    }

    @TestFactory
    List<DynamicTest> everyPureRoomUsesOnlyWhatItsAllowListNames() {
        return PURE.stream()
                .map(room -> DynamicTest.dynamicTest(
                        room.name(), () -> allowList(room).check(PRODUCT)))
                .toList();
    }

    private static final String[] PURE_PACKAGES =
            PURE.stream().map(room -> "evenfall." + room.name()).toArray(String[]::new);

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
                                "java.util.UUID.randomUUID")))
                .because("the core runs on the time that its events carry");
    }

    private static ArchRule onlyExactMath(String... packages) {
        Set<String> exact =
                Set.of("sqrt", "abs", "min", "max", "floor", "ceil", "round", "copySign", "floorMod", "floorDiv");
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
                .because("a replay gives the same bytes on any machine; StrictMath does, Math does not");
    }

    private static ArchRule noLooseNumbers(String... packages) {
        return noClasses()
                .that()
                .resideInAnyPackage(packages)
                .should()
                .accessTargetWhere(new DescribedPredicate<JavaAccess<?>>("text of a double without fixed decimals") {
                    @Override
                    public boolean test(JavaAccess<?> access) {
                        String owner = access.getTargetOwner().getName();
                        boolean appended = owner.equals("java.lang.StringBuilder")
                                && access.getName().equals("append")
                                && access instanceof JavaMethodCall call
                                && call.getTarget().getRawParameterTypes().stream()
                                        .anyMatch(t -> t.getName().equals("double"));
                        return appended
                                || (owner.equals("java.lang.Double")
                                        && access.getName().equals("toString"))
                                || (owner.equals("java.lang.String")
                                        && access.getName().equals("format"));
                    }
                })
                .because("numbers become text through FixedDecimals only");
    }

    private static DescribedPredicate<JavaAccess<?>> calls(String what, Set<String> targets) {
        return new DescribedPredicate<>(what) {
            @Override
            public boolean test(JavaAccess<?> access) {
                return targets.contains(access.getTargetOwner().getName() + "." + access.getName());
            }
        };
    }

    @Test
    void theCoreHasNoClockAndNoChance() {
        noClockNoChance(PURE_PACKAGES).check(PRODUCT);
        // Edges that a replay passes through too.
        noClockNoChance("evenfall.config", "evenfall.outlet", "evenfall.trace", "evenfall.message", "evenfall.replay")
                .check(PRODUCT);
    }

    @Test
    void theCoreUsesExactMathematics() {
        onlyExactMath(PURE_PACKAGES).check(PRODUCT);
        onlyExactMath("evenfall.outlet").check(PRODUCT);
    }

    @Test
    void theOutputsRoomsWriteNumbersInOneWay() {
        noLooseNumbers("evenfall.judge", "evenfall.ledger", "evenfall.monitor", "evenfall.message")
                .check(PRODUCT);
    }

    @Test
    void roomsFormNoCircle() {
        slices().matching("evenfall.(*)..").should().beFreeOfCycles().check(PRODUCT);
    }

    @Test
    void librariesOfTheShellStayInTheirRooms() {
        noClasses()
                .that()
                .resideOutsideOfPackage("evenfall.serial..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("com.fazecast..")
                .because("serial ports are opened in one room")
                .check(PRODUCT);
        noClasses()
                .that()
                .resideOutsideOfPackage("evenfall.mqtt..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.eclipse.paho..")
                .because("the broker is spoken to in one room")
                .check(PRODUCT);
    }

    @Test
    void everyRuleBites() {
        assertThat(allowListOfTrap().evaluate(TRAP).hasViolation()).isTrue();
        assertThat(noClockNoChance("evenfall.trap")
                        .evaluate(TRAP)
                        .getFailureReport()
                        .getDetails())
                .anyMatch(line -> line.contains("nanoTime"))
                .anyMatch(line -> line.contains("java.util.Random"));
        assertThat(onlyExactMath("evenfall.trap")
                        .evaluate(TRAP)
                        .getFailureReport()
                        .getDetails())
                .anyMatch(line -> line.contains("sin"))
                .noneMatch(line -> line.contains("sqrt"));
        assertThat(noLooseNumbers("evenfall.trap")
                        .evaluate(TRAP)
                        .getFailureReport()
                        .getDetails())
                .anyMatch(line -> line.contains("append"))
                .anyMatch(line -> line.contains("format"));
    }

    private static ArchRule allowListOfTrap() {
        return allowList(new Room("trap", "rig"));
    }
}
