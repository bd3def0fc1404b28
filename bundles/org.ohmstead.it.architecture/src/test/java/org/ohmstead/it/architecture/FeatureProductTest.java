// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the feature puts beside the plug-ins of each system's product, and what its start scripts start. */
class FeatureProductTest {
    private static final Path FEATURE = Bundles.root().resolve("features/org.ohmstead.feature");
    private static final Pattern ENVIRONMENT =
            Pattern.compile("<os>(\\w+)</os>\\s*<ws>(\\w+)</ws>\\s*<arch>(\\w+)</arch>");
    private static final Pattern APPLICATION = Pattern.compile("org\\.ohmstead\\.(app|cli)\\.[a-z]+");

    static Stream<String> rootEntries() throws IOException {
        return entries().stringPropertyNames().stream()
                .filter(name -> name.equals("root") || name.startsWith("root."))
                .filter(name -> !name.contains(".permissions."))
                .sorted();
    }

    static Stream<String> permissionEntries() throws IOException {
        return entries().stringPropertyNames().stream()
                .filter(name -> name.contains(".permissions."))
                .sorted();
    }

    /** Returns the systems that the build makes products for. */
    static Stream<String> systems() throws IOException {
        Set<String> systems = new TreeSet<>();
        Matcher environments =
                ENVIRONMENT.matcher(Files.readString(Bundles.root().resolve("pom.xml")));
        while (environments.find()) {
            systems.add(environments.group(1) + "." + environments.group(2) + "." + environments.group(3));
        }
        assertEquals(5, systems.size(), systems.toString());
        return systems.stream();
    }

    @ParameterizedTest
    @MethodSource("rootEntries")
    void everyRootEntryIsThere(String entry) throws IOException {
        for (String value : values(entry)) {
            if (value.startsWith("file:")) {
                Path file = FEATURE.resolve(value.substring("file:".length()));
                assertTrue(Files.isRegularFile(file), entry + " names no file: " + value);
            } else {
                assertTrue(Files.isDirectory(FEATURE.resolve(value)), entry + " names no folder: " + value);
                assertTrue(!files(value).isEmpty(), entry + " names an empty folder: " + value);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("permissionEntries")
    void everyPermissionIsForAFileOfItsSystem(String entry) throws IOException {
        String system = entry.substring(0, entry.indexOf(".permissions."));
        Set<String> shipped = new TreeSet<>();
        for (String value : values(system)) {
            files(value).forEach(file -> shipped.add(file.getFileName().toString()));
        }
        for (String name : values(entry)) {
            assertTrue(shipped.contains(name), entry + " names " + name + ", which is not among " + shipped);
        }
    }

    @ParameterizedTest
    @MethodSource("systems")
    void everySystemHasAStartScriptThatCanBeRun(String system) throws IOException {
        String script = system.startsWith("win32") ? "ohmstead.bat" : "ohmstead";
        boolean found = false;
        for (String value : values("root." + system)) {
            for (Path file : files(value)) {
                String name = file.getFileName().toString();
                found |= name.equals(script);
                if (Files.readString(file).startsWith("#!")) {
                    assertTrue(
                            values("root." + system + ".permissions.755").contains(name),
                            name + " may not be run on " + system);
                }
            }
        }
        assertTrue(found, "no " + script + " for " + system);
    }

    @Test
    void noStartScriptIsLeftOut() throws IOException {
        Set<String> named = new TreeSet<>();
        for (String entry : rootEntries().toList()) {
            named.addAll(values(entry));
        }
        try (Stream<Path> folders = Files.list(FEATURE.resolve("start"))) {
            folders.forEach(folder -> assertTrue(
                    named.contains("start/" + folder.getFileName()), "no system gets start/" + folder.getFileName()));
        }
    }

    @Test
    void theScriptsStartApplicationsThatExist() throws IOException {
        Set<String> started = new TreeSet<>();
        for (String script : List.of("start/unix/ohmstead", "start/windows/ohmstead.bat")) {
            Matcher applications = APPLICATION.matcher(Files.readString(FEATURE.resolve(script)));
            while (applications.find()) {
                started.add(applications.group());
            }
        }
        assertEquals(2, started.size(), started.toString());
        for (String application : started) {
            assertTrue(declares(application, "applications"), "no plugin.xml declares " + application);
        }
    }

    @Test
    void theProductStartsAnApplicationThatExists() throws IOException {
        String product = Files.readString(Bundles.root().resolve("product/ohmstead.product"));
        assertTrue(declares(attribute(product, "application"), "applications"), "the product's application");
        assertTrue(declares(attribute(product, "id"), "products"), "the product's id");
    }

    private static String attribute(String xml, String name) {
        Matcher attribute =
                Pattern.compile("<product [^>]*\\b" + name + "=\"([^\"]+)\"").matcher(xml);
        assertTrue(attribute.find(), "the product has no " + name);
        return attribute.group(1);
    }

    /** Returns whether the bundle that an id begins with has an extension of the rest of the id. */
    private static boolean declares(String id, String point) throws IOException {
        int dot = id.lastIndexOf('.');
        Path declarations =
                Bundles.root().resolve("bundles").resolve(id.substring(0, dot)).resolve("plugin.xml");
        return Files.exists(declarations)
                && Files.readString(declarations)
                        .contains("<extension id=\"" + id.substring(dot + 1) + "\" point=\"org.eclipse.core.runtime."
                                + point + "\"");
    }

    private static Properties entries() throws IOException {
        Properties entries = new Properties();
        try (Reader in = Files.newBufferedReader(FEATURE.resolve("build.properties"))) {
            entries.load(in);
        }
        assertTrue(entries.size() > 5, "the feature ships nothing beside its plug-ins: " + entries);
        return entries;
    }

    private static List<String> values(String entry) throws IOException {
        return Stream.of(entries().getProperty(entry, "").split(","))
                .map(String::strip)
                .filter(value -> !value.isEmpty())
                .toList();
    }

    /** Returns the files of a folder of the feature. */
    private static List<Path> files(String folder) throws IOException {
        try (Stream<Path> files = Files.list(FEATURE.resolve(folder))) {
            return files.toList();
        }
    }
}
