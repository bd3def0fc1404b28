// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The arrows between bundles, seen in the compiled classes, and what names and types must be like. */
class ArchitectureTest {
    private static JavaClasses all;

    @BeforeAll
    static void readClasses() throws IOException {
        List<Path> folders = Bundles.all().stream()
                .map(bundle -> bundle.resolve("target/classes"))
                .filter(Files::isDirectory)
                .toList();
        all = new ClassFileImporter().importPaths(folders);
        assertTrue(all.size() > 100, "the compiled classes were not found: only " + all.size());
    }

    static Stream<String> bundlesWithArrows() {
        return Arrows.ALLOWED.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("bundlesWithArrows")
    void usesOnlyWhatTheDesignAllows(String bundle) {
        List<String> allowed = Arrows.ALLOWED.get(bundle);
        classes()
                .that(describe("belong to " + bundle, type -> owner(type).equals(bundle)))
                .should()
                .onlyDependOnClassesThat(describe(
                        "the design allows", target -> isAllowed(target.getBaseComponentType(), bundle, allowed)))
                .check(all);
    }

    private static boolean isAllowed(JavaClass target, String bundle, List<String> allowed) {
        String packageName = target.getPackageName();
        if (target.isPrimitive() || packageName.startsWith("java.") && !packageName.startsWith("java.awt")) {
            return true;
        }
        if (packageName.startsWith("java.awt") || packageName.startsWith("javax.imageio")) {
            return Set.of("org.ohmstead.plot.chart", "org.ohmstead.plot.ui", "org.ohmstead.report")
                    .contains(bundle);
        }
        if (packageName.startsWith("javax.")
                || packageName.startsWith("org.w3c.")
                || packageName.startsWith("org.xml.")) {
            return !packageName.startsWith("javax.swing");
        }
        if (owner(target).equals(bundle)) {
            return true;
        }
        return !packageName.contains(".internal")
                && allowed.stream().anyMatch(prefix -> Arrows.isWithin(packageName, prefix));
    }

    /** Returns the bundle that a package belongs to: the longest name in the table that begins it. */
    private static String owner(JavaClass type) {
        String packageName = type.getPackageName();
        return Arrows.ALLOWED.keySet().stream()
                .filter(bundle -> packageName.equals(bundle) || packageName.startsWith(bundle + "."))
                .max(java.util.Comparator.comparingInt(String::length))
                .orElse("");
    }

    /** Puts each class into the slice of its bundle, if that is one of the wanted. */
    private static SliceAssignment slicesOf(Set<String> bundles) {
        return new SliceAssignment() {
            @Override
            public SliceIdentifier getIdentifierOf(JavaClass type) {
                String bundle = owner(type);
                return bundles.contains(bundle) ? SliceIdentifier.of(bundle) : SliceIdentifier.ignore();
            }

            @Override
            public String getDescription() {
                return "one slice for each bundle";
            }
        };
    }

    /** Only parts with a face show readings beside curves; the calculations do not know of each other. */
    @Test
    void theFourModulesNeverMeet() {
        slices().assignedFrom(slicesOf(Set.of(
                        "org.ohmstead.load", "org.ohmstead.curves", "org.ohmstead.thermal", "org.ohmstead.testlog")))
                .should()
                .notDependOnEachOther()
                .check(all);
    }

    @Test
    void noCycles() {
        slices().assignedFrom(slicesOf(Arrows.ALLOWED.keySet()))
                .should()
                .beFreeOfCycles()
                .check(all);
    }

    @Test
    void theModelIsValues() {
        classes()
                .that()
                .resideInAPackage("org.ohmstead.model")
                .and()
                .arePublic()
                .and()
                .areTopLevelClasses()
                .and()
                .doNotHaveSimpleName("ProjectChecks")
                .and()
                .doNotHaveSimpleName("CopperWire")
                .should()
                .beRecords()
                .orShould()
                .beEnums()
                .orShould()
                .beInterfaces()
                .check(all);
    }

    @Test
    void onlyTheCommandLineWritesToTheStandardStreams() {
        noClasses()
                .that()
                .resideOutsideOfPackages("org.ohmstead.cli..", "org.ohmstead.it.tests..")
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(all);
    }

    /**
     * XML is read and written only where it was looked at: each place closes its reader, and takes that of Java itself, which no module
     * can put another in the place of. Files with entities and document types are fed to each in the tests of its bundle.
     */
    @Test
    void xmlIsReadOnlyWhereTheReaderIsClosed() {
        String places =
                "org\\.ohmstead\\.(app\\.internal\\.help\\.(StepSheet|HelpPageParser)|exchange\\.internal\\.XlsxTable"
                        + "|report\\.internal\\.SafeDrawing|plot\\.chart\\.internal\\.Svg.*)";
        String readers = "javax\\.xml\\.(parsers|stream|transform|xpath|validation)\\..*Factory";
        noClasses()
                .that()
                .haveNameNotMatching(places)
                .should()
                .dependOnClassesThat()
                .haveNameMatching(readers)
                .check(all);
        noClasses()
                .should()
                .callMethodWhere(
                        target(nameMatching("newInstance|newFactory")).and(target(With.owner(nameMatching(readers)))))
                .check(all);
    }

    /** A file that says which class it wants would choose what runs here; no form of ours needs that. */
    @Test
    void noFileChoosesAClass() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .haveNameMatching("java\\.io\\.ObjectInputStream|java\\.beans\\.XMLDecoder")
                .orShould()
                .dependOnClassesThat()
                .haveNameMatching(
                        "com\\.fasterxml\\.jackson\\.(annotation\\.JsonTypeInfo.*|databind\\.jsontype\\..*|annotation\\.JacksonPolymorphic.*)")
                .check(all);
    }

    /**
     * A number's unit stands in its name; the cheapest guard against mixing RMS with peak or watts with dBW. The ends of a range have the unit
     * that stands in the name of the range; what has its unit or quantity beside it as data needs none in its name.
     */
    @Test
    void numbersOfTheModelNameTheirUnit() {
        fields().that()
                .haveRawType(double.class)
                .and()
                .areDeclaredInClassesThat()
                .resideInAnyPackage("org.ohmstead.model", "org.ohmstead.measure..", "org.ohmstead.curves")
                .and()
                .areDeclaredInClassesThat()
                .resideOutsideOfPackage("org.ohmstead.measure.ui..")
                .and()
                .areNotStatic()
                .and()
                .areNotDeclaredIn("org.ohmstead.model.Range")
                .and()
                .areDeclaredInClassesThat(describe("do not hold the unit as data", type -> !holdsUnit(type)))
                .should()
                .haveNameMatching(
                        "(?i).*(Volts|VoltsRms|VoltsPeak|Amps|AmpsRms|Ohms|Watts|Hz|Seconds|Celsius|Kelvin"
                                + "|KelvinPerWatt|Ratio|Db|Henries|Metres|SquareMillimetres|RelativeUncertainty|confidence"
                                + "|coverageFactor|factor|attenuation|VoltsPerFullScale|probabilityMet|coefficient|degreesOfFreedom|fixed|resolution|Squared|PerVolt|Ratio[A-Z]\\w*)")
                .check(all);
    }

    private static boolean holdsUnit(JavaClass type) {
        return type.getFields().stream()
                        .map(field -> field.getRawType().getName())
                        .anyMatch(Set.of(
                                "org.ohmstead.units.Unit",
                                "org.ohmstead.model.StopLimit",
                                "org.ohmstead.model.StopLimit$Quantity")::contains)
                || Set.of("org.ohmstead.model.MeasuredFigure", "org.ohmstead.model.Price")
                        .contains(type.getName());
    }
}
