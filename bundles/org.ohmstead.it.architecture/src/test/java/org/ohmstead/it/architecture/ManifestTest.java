// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.jar.Attributes;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The arrows between bundles and the rules about exports, read from the manifests. */
class ManifestTest {
    static Stream<Path> bundles() throws IOException {
        return Bundles.all().stream();
    }

    static Stream<Path> shippedBundles() throws IOException {
        List<Path> shipped = new ArrayList<>();
        for (Path bundle : Bundles.all()) {
            // A fragment has no API of its own; it only mends its host's manifest.
            boolean fragment = Bundles.manifest(bundle).getValue("Fragment-Host") != null;
            if (!fragment
                    && !bundle.getFileName().toString().matches("org\\.ohmstead\\.(it\\..*|.*\\.tests|ui\\.bare)")) {
                shipped.add(bundle);
            }
        }
        return shipped.stream();
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void namesItselfAsItsFolder(Path bundle) throws IOException {
        Attributes manifest = Bundles.manifest(bundle);
        String name = manifest.getValue("Bundle-SymbolicName").replaceAll(";.*", "");
        assertEquals(bundle.getFileName().toString(), name);
        assertEquals(name, manifest.getValue("Automatic-Module-Name"));
        assertEquals("JavaSE-17", manifest.getValue("Bundle-RequiredExecutionEnvironment"));
        assertEquals("Ohmstead", manifest.getValue("Bundle-Vendor"));
        assertNotNull(manifest.getValue("Bundle-Name"));
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void hasNoActivatorAndNoBackDoor(Path bundle) throws IOException {
        Attributes manifest = Bundles.manifest(bundle);
        assertNull(manifest.getValue("Bundle-Activator"));
        assertNull(manifest.getValue("DynamicImport-Package"));
        assertNull(manifest.getValue("Eclipse-BuddyPolicy"));
        String text = Files.readString(bundle.resolve("META-INF/MANIFEST.MF"));
        assertFalse(text.contains("x-friends") || text.contains("x-internal"), "exported means API");
        for (String line : text.split("\n")) {
            assertTrue(line.length() <= 72, "a manifest line is longer than 72: " + line);
        }
    }

    @ParameterizedTest
    @MethodSource("shippedBundles")
    void exportsOnlyItsRootPackageWithAVersion(Path bundle) throws IOException {
        String exported = Bundles.manifest(bundle).getValue("Export-Package");
        if (!Arrows.hasFace(bundle.getFileName().toString())) { // a view is declared in plugin.xml and called by nobody
            assertNotNull(exported, "a bundle without API is of no use to another");
        }
        for (String clause : Bundles.clauses(exported)) {
            assertTrue(clause.matches("[a-z.]+;version=\"\\d+\\.\\d+\\.\\d+\"(;uses:=.*)?"), "no version: " + clause);
            String exportedPackage = clause.replaceAll(";.*", "");
            assertFalse(exportedPackage.contains(".internal"), clause);
            assertTrue(exportedPackage.startsWith(bundle.getFileName().toString()), clause);
            Path folder = bundle.resolve("src/main/java").resolve(exportedPackage.replace('.', '/'));
            assertTrue(Files.exists(folder.resolve("package-info.java")), "no package-info: " + clause);
        }
    }

    @ParameterizedTest
    @MethodSource("shippedBundles")
    void importsOursWithARange(Path bundle) throws IOException {
        String imported = Bundles.manifest(bundle).getValue("Import-Package");
        for (String clause : Bundles.clauses(imported)) {
            if (clause.startsWith("org.ohmstead.")) {
                assertTrue(clause.matches("[a-z.]+;version=\"\\[\\d+\\.\\d+\\.\\d+,\\d+\\.\\d+\\.\\d+\\)\""), clause);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("shippedBundles")
    void importsOnlyWhatTheDesignAllows(Path bundle) throws IOException {
        String name = bundle.getFileName().toString();
        List<String> allowed = Arrows.ALLOWED.get(name);
        assertNotNull(allowed, name + " is not in the design's table of bundles; add it to Arrows");
        String imported = Bundles.manifest(bundle).getValue("Import-Package");
        for (String clause : Bundles.clauses(imported)) {
            String importedPackage = clause.replaceAll(";.*", "");
            if (importedPackage.matches("(javax|org\\.w3c|org\\.xml)\\..*")) {
                continue;
            }
            assertTrue(
                    allowed.stream().anyMatch(prefix -> Arrows.isWithin(importedPackage, prefix)),
                    name + " must not import " + importedPackage);
        }
    }

    @ParameterizedTest
    @MethodSource("shippedBundles")
    void requiresNoBundleUnlessItIsAnApplication(Path bundle) throws IOException {
        String name = bundle.getFileName().toString();
        String required = Bundles.manifest(bundle).getValue("Require-Bundle");
        if (Arrows.hasFace(name)) {
            // The platform's packages are split over its bundles, so that importing them one by one gives only half.
            for (String clause : Bundles.clauses(required)) {
                assertTrue(
                        clause.matches("org\\.eclipse\\.(ui|core\\.runtime|help)(;.*)?"), name + " requires " + clause);
            }
        } else if (!name.equals("org.ohmstead.cli")) {
            assertNull(required, "packages are imported, bundles are not required");
        }
    }

    @ParameterizedTest
    @MethodSource("shippedBundles")
    void standsInTheFeature(Path bundle) throws IOException {
        String name = bundle.getFileName().toString();
        String which =
                switch (name) {
                    case "org.ohmstead.workbench.sample" -> "org.ohmstead.sample.feature";
                    case "org.ohmstead.measure.sample", "org.ohmstead.measure.testkit" -> name + ".feature";
                    default -> "org.ohmstead.feature";
                };
        Path feature = Bundles.root().resolve("features").resolve(which).resolve("feature.xml");
        assertTrue(
                Files.readString(feature).contains("<plugin id=\"" + bundle.getFileName() + "\" "),
                "the feature does not ship " + bundle.getFileName());
    }

    @ParameterizedTest
    @MethodSource("topLevel")
    void topLevelIsTheCard(String name) {
        List<String> card = Arrays.asList(
                "README.md", "DEVELOPERS.md", "LICENSE", "pom.xml", "bundles", "features", "product", "demo-data");
        assertTrue(card.contains(name) || name.startsWith("."), name + " does not belong at the top level");
    }

    static Stream<String> topLevel() throws IOException {
        try (Stream<Path> content = Files.list(Bundles.root())) {
            List<String> names =
                    content.map(path -> path.getFileName().toString()).toList();
            return names.stream().filter(name -> !Map.of("target", true).containsKey(name));
        }
    }
}
