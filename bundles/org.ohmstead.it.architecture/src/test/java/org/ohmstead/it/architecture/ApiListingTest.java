// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What plug-ins are written against does not change unnoticed: the listing of each package, with its version, is committed, and whoever
 * changes a signature changes it too. {@code -Dohmstead.api.write=true} writes the listings anew.
 */
public class ApiListingTest {
    private static final String WRITE = "ohmstead.api.write";
    private static final Path LISTINGS = Path.of("src/test/resources/api");
    private static final String VERSION = "version ";

    /**
     * A package of which signatures are listed.
     *
     * @param bundle where it is
     * @param name the package
     * @param only the types to list; all when it is empty
     */
    record Api(String bundle, String name, Set<String> only) {
        Path listing() {
            return LISTINGS.resolve(name + ".txt");
        }

        @Override
        public String toString() {
            return name;
        }
    }

    /** All that the bundles of the API export, and what they use of the model's services. */
    static Stream<Api> packages() throws IOException {
        List<Api> packages = new ArrayList<>();
        for (String bundle : List.of("org.ohmstead.measure", "org.ohmstead.measure.testkit")) {
            for (String name : exported(bundle)) {
                packages.add(new Api(bundle, name, Set.of()));
            }
        }
        packages.add(new Api("org.ohmstead.model", "org.ohmstead.model", Set.of("Precaution", "StopLimit")));
        return packages.stream();
    }

    private static List<String> exported(String bundle) throws IOException {
        return Bundles.clauses(Bundles.manifest(folder(bundle)).getValue("Export-Package")).stream()
                .map(clause -> clause.replaceAll(";.*", ""))
                .toList();
    }

    private static Path folder(String bundle) {
        return Bundles.root().resolve("bundles").resolve(bundle);
    }

    private static String version(Api api) throws IOException {
        return Bundles.clauses(Bundles.manifest(folder(api.bundle())).getValue("Export-Package")).stream()
                .filter(clause -> clause.startsWith(api.name() + ";"))
                .map(clause -> clause.replaceAll("(?s).*?version=\"([^\"]+)\".*", "$1"))
                .findFirst()
                .orElseThrow();
    }

    private static URL[] compiled() throws IOException {
        List<URL> folders = new ArrayList<>();
        for (Path bundle : Bundles.all()) {
            folders.add(bundle.resolve("target/classes").toUri().toURL());
        }
        return folders.toArray(URL[]::new);
    }

    @ParameterizedTest
    @MethodSource("packages")
    void noSignatureChangesUnnoticed(Api api) throws IOException {
        JavaClasses classes =
                new ClassFileImporter().importPath(folder(api.bundle()).resolve("target/classes"));
        List<String> now = new ArrayList<>(List.of(VERSION + version(api)));
        try (URLClassLoader loader = new URLClassLoader(compiled(), null)) {
            now.addAll(ApiListing.of(classes, loader, api.name(), api.only()));
        }
        assertTrue(now.size() > 1, "nothing was found of " + api);
        if (Boolean.getBoolean(WRITE)) {
            Files.createDirectories(LISTINGS);
            Files.writeString(api.listing(), String.join("\n", now) + "\n");
            return;
        }
        List<String> changes = changes(Files.readAllLines(api.listing()), now);
        if (!changes.isEmpty()) {
            fail("The API " + api + " changed:\n  " + String.join("\n  ", changes) + "\n" + advice(api));
        }
    }

    /** Returns what was added and what was taken away, each line with a sign in front. */
    private static List<String> changes(List<String> before, List<String> now) {
        List<String> changes = new ArrayList<>();
        before.stream().filter(line -> !now.contains(line)).forEach(line -> changes.add("- " + line));
        now.stream().filter(line -> !before.contains(line)).forEach(line -> changes.add("+ " + line));
        return changes;
    }

    private static String advice(Api api) {
        return "If this is meant, raise the version of the package in " + api.bundle()
                + "/META-INF/MANIFEST.MF: the major number when a plug-in that was built before would not compile or"
                + " run any more, the minor one when something was added, the micro one when only its behaviour was"
                + " mended (below 1.0.0 the minor one for both of the first). Then write the listings anew: mvn verify"
                + " -pl bundles/org.ohmstead.it.architecture -am -Dtest=ApiListingTest"
                + " -Dsurefire.failIfNoSpecifiedTests=false -Dohmstead.api.write=true";
    }

    @Test
    void namesEachChangedLine() {
        List<String> before = Arrays.asList("version 0.1.0", "public interface A", "A | method public void a()");
        List<String> now = Arrays.asList("version 0.1.0", "public interface A", "A | method public int a()");
        assertEquals(List.of("- A | method public void a()", "+ A | method public int a()"), changes(before, now));
        assertEquals(List.of(), changes(now, now));
    }

    /** The listing of types that are here, written by hand. */
    @Test
    void listsWhatOthersCanSee() {
        JavaClasses classes = new ClassFileImporter().importClasses(Seen.class, Seen.Inner.class, Seen.Word.class);
        assertEquals(
                List.of(
                        "public static abstract class ApiListingTest$Seen :"
                                + " java.util.concurrent.Callable<java.lang.String>",
                        "ApiListingTest$Seen | constructor protected (int[], java.util.List<java.lang.String>)",
                        "ApiListingTest$Seen | field public static final int SIZE",
                        "ApiListingTest$Seen | method public java.lang.String call() throws java.io.IOException",
                        "public record ApiListingTest$Seen$Inner(double supplyVolts)",
                        "ApiListingTest$Seen$Inner | constructor public (double)",
                        "ApiListingTest$Seen$Inner | method public double supplyVolts()",
                        "ApiListingTest$Seen$Inner | method public final boolean equals(java.lang.Object)",
                        "ApiListingTest$Seen$Inner | method public final int hashCode()",
                        "ApiListingTest$Seen$Inner | method public final java.lang.String toString()",
                        "public enum ApiListingTest$Seen$Word",
                        "ApiListingTest$Seen$Word | constant ONE",
                        "ApiListingTest$Seen$Word | method public static"
                                + " org.ohmstead.it.architecture.ApiListingTest$Seen$Word valueOf(java.lang.String)",
                        "ApiListingTest$Seen$Word | method public static"
                                + " org.ohmstead.it.architecture.ApiListingTest$Seen$Word[] values()"),
                ApiListing.of(
                        classes,
                        ApiListingTest.class.getClassLoader(),
                        "org.ohmstead.it.architecture",
                        Set.of("ApiListingTest", "Seen")));
    }

    /** Something to list. */
    public abstract static class Seen implements Callable<String> {
        /** Seen. */
        public static final int SIZE = 3;

        private final int[] hidden;

        /** Seen. */
        protected Seen(int[] hidden, List<String> words) {
            this.hidden = hidden.clone();
            this.hidden[0] = words.size();
        }

        @Override
        public String call() throws IOException {
            return String.valueOf(hidden[0]);
        }

        void notSeen() {
            hidden[0]++;
        }

        /** Seen. */
        public record Inner(double supplyVolts) {}

        /** Seen. */
        public enum Word {
            ONE
        }
    }
}
