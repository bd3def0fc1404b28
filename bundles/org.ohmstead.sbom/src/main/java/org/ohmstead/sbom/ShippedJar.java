// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sbom;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;

/**
 * A bundle of a built product.
 *
 * @param bundle its name
 * @param version the three numbers of its version
 * @param mavenVersion the version that it says it has in Maven's repository
 * @param sha256 hash of the jar; empty for a bundle that is a folder
 */
record ShippedJar(String bundle, String version, Optional<String> mavenVersion, Optional<String> sha256) {
    ShippedJar {
        Objects.requireNonNull(bundle, "bundle");
        Objects.requireNonNull(version, "version");
        Objects.requireNonNull(mavenVersion, "mavenVersion");
        Objects.requireNonNull(sha256, "sha256");
    }

    /** Reads the bundles of some products, each once, by the names of their files. */
    static SortedMap<String, ShippedJar> of(List<Path> products) throws IOException {
        SortedMap<String, ShippedJar> jars = new TreeMap<>();
        for (Path product : products) {
            for (Path file : files(product.resolve("plugins"))) {
                String name = file.getFileName().toString();
                if (!jars.containsKey(name)) {
                    jars.put(name, read(file));
                }
            }
        }
        return jars;
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }

    private static ShippedJar read(Path file) throws IOException {
        String name = file.getFileName().toString().replaceAll("\\.jar$", "");
        int mark = name.lastIndexOf('_');
        if (mark < 0) {
            throw new IOException(file + " is no bundle of a product: its name has no version.");
        }
        String bundle = name.substring(0, mark);
        String[] numbers = name.substring(mark + 1).split("\\.");
        String version = String.join(".", List.of(numbers).subList(0, Math.min(3, numbers.length)));
        return Files.isDirectory(file)
                ? new ShippedJar(bundle, version, Optional.empty(), Optional.empty())
                : new ShippedJar(bundle, version, mavenVersion(file), Optional.of(hash(file)));
    }

    private static String hash(Path file) throws IOException {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException("every Java has SHA-256", never);
        }
    }

    /** A jar that holds several has no version of its own there. */
    private static Optional<String> mavenVersion(Path file) throws IOException {
        try (JarFile jar = new JarFile(file.toFile())) {
            List<JarEntry> descriptions = jar.stream()
                    .filter(entry -> entry.getName().matches("META-INF/maven/[^/]+/[^/]+/pom\\.properties"))
                    .toList();
            if (descriptions.size() != 1) {
                return Optional.empty();
            }
            Properties properties = new Properties();
            try (InputStream content = jar.getInputStream(descriptions.get(0))) {
                properties.load(content);
            }
            return Optional.ofNullable(properties.getProperty("version"));
        }
    }
}
