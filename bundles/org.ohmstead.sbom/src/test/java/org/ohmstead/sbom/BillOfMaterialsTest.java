// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sbom;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import org.cyclonedx.model.Bom;
import org.cyclonedx.model.Component;
import org.cyclonedx.parsers.JsonParser;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BillOfMaterialsTest {
    private static final String LIST =
            """
            # Third-party software

            | Work | Version | Licence | Used for |
            | --- | --- | --- | --- |
            | Eclipse Equinox, Platform, p2, EMF and ECF (`org.eclipse.*`) | 4.38 (2025-12) | EPL-2.0 | framework |
            | ICU4J | 78.1 | Unicode-3.0 | words |
            | Jackson core, databind, annotations, CSV | 2.23 | Apache-2.0 | JSON |
            | xml-apis-ext | 1.3.04 | Apache-2.0 and W3C | drawings |
            | Open Sans Regular | 1.10 | Apache-2.0 | text |
            """;

    @TempDir
    Path folder;

    private Path plugins;
    private Path list;
    private Path file;

    @BeforeEach
    void makeProduct() throws IOException {
        plugins = Files.createDirectories(folder.resolve("product").resolve("plugins"));
        list = Files.writeString(folder.resolve("THIRD-PARTY.md"), LIST);
        file = folder.resolve("bill.json");
        jar("org.eclipse.jface_3.38.100.v20251108-1551.jar", "");
        Files.createDirectory(plugins.resolve("org.eclipse.ui.themes_1.2.2900.v20250806-1940"));
        jar("com.ibm.icu_78.1.0.jar", "");
        jar("com.fasterxml.jackson.core.jackson-databind_2.23.0.jar", "2.23.0");
        jar("wrapped.xml-apis.xml-apis-ext_1.3.4.jar", "");
        jar("org.ohmstead.units_0.1.0.202611270130.jar", "0.1.0-SNAPSHOT");
    }

    private void jar(String name, String mavenVersion) throws IOException {
        try (JarOutputStream jar = new JarOutputStream(Files.newOutputStream(plugins.resolve(name)))) {
            jar.putNextEntry(new JarEntry("about.txt"));
            jar.write(name.getBytes());
            if (!mavenVersion.isEmpty()) {
                jar.putNextEntry(new JarEntry("META-INF/maven/some.group/some.artifact/pom.properties"));
                jar.write(("version=" + mavenVersion + "\n").getBytes());
            }
        }
    }

    private List<String> faults() throws Exception {
        return BillOfMaterials.write(list, file, List.of(plugins.getParent()));
    }

    private Component component(String name) throws Exception {
        Bom bom = new JsonParser().parse(file.toFile());
        return bom.getComponents().stream()
                .filter(each -> each.getName().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everyJarIsListedWithVersionLicenceHashAndAddress() throws Exception {
        assertEquals(List.of(), faults());
        assertEquals(7, new JsonParser().parse(file.toFile()).getComponents().size());
        Component databind = component("com.fasterxml.jackson.core.jackson-databind");
        assertEquals("pkg:maven/com.fasterxml.jackson.core/jackson-databind@2.23.0", databind.getPurl());
        assertEquals("Apache-2.0", databind.getLicenses().getLicenses().get(0).getId());
        byte[] content = Files.readAllBytes(plugins.resolve("com.fasterxml.jackson.core.jackson-databind_2.23.0.jar"));
        assertEquals(
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content)),
                databind.getHashes().get(0).getValue());
        assertEquals(
                "pkg:maven/com.ibm.icu/icu4j@78.1", component("com.ibm.icu").getPurl());
        assertEquals(
                "pkg:maven/xml-apis/xml-apis-ext@1.3.04",
                component("wrapped.xml-apis.xml-apis-ext").getPurl());
        assertEquals(
                "Apache-2.0 and W3C",
                component("wrapped.xml-apis.xml-apis-ext")
                        .getLicenses()
                        .getLicenses()
                        .get(0)
                        .getName());
        assertEquals(
                "pkg:maven/org.eclipse.platform/org.eclipse.jface@3.38.100",
                component("org.eclipse.jface").getPurl());
        assertEquals(
                "pkg:generic/org.ohmstead.units@0.1.0",
                component("org.ohmstead.units").getPurl());
    }

    @Test
    void whatTheFileSaysIsWhatTheFormWants() throws Exception {
        faults();
        JsonParser parser = new JsonParser();
        assertTrue(parser.isValid(file.toFile(), Bill.FORM));
        String broken = Files.readString(file).replace("\"library\"", "\"shelf\"");
        assertFalse(parser.isValid(broken.getBytes(), Bill.FORM), "the check lets anything through");
    }

    @Test
    void aJarThatTheListDoesNotHaveIsAFault() throws Exception {
        jar("org.sat4j.core_2.3.6.v20201214.jar", "");
        jar("net.example.unheard_1.0.0.jar", "");
        List<String> faults = faults();
        assertEquals(2, faults.size(), faults.toString());
        assertTrue(faults.get(0).contains("net.example.unheard 1.0.0"), faults.get(0));
        assertTrue(faults.get(1).contains("SAT4J"), faults.get(1));
        assertEquals(
                1,
                BillOfMaterials.run(
                        list.toString(), file.toString(), plugins.getParent().toString()));
    }

    @Test
    void anOtherVersionAndAWorkThatIsGoneAreFaults() throws Exception {
        Files.delete(plugins.resolve("com.ibm.icu_78.1.0.jar"));
        Files.writeString(list, LIST.replace("1.3.04", "1.3.05"));
        List<String> faults = faults();
        assertEquals(2, faults.size(), faults.toString());
        assertTrue(faults.get(0).contains("1.3.05"), faults.get(0));
        assertTrue(faults.get(1).contains("ICU4J"), faults.get(1));
    }

    @Test
    void wrongWordsAndAMissingProductAreSaid() {
        assertEquals(2, BillOfMaterials.run("only", "two"));
        assertEquals(
                4,
                BillOfMaterials.run(
                        list.toString(),
                        file.toString(),
                        folder.resolve("nowhere").toString()));
    }
}
