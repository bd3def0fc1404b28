// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sbom;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a jar of the product belongs to.
 *
 * @param prefix of the jar's name
 * @param group in Maven's repository; empty for what is not there
 * @param artifact in Maven's repository; "=" for the bundle's own name
 * @param title as the list of third-party software calls the work
 */
record Work(String prefix, String group, String artifact, String title) {
    private static final String FILE = "works.txt";
    private static final int PARTS = 4;

    Work {
        Objects.requireNonNull(prefix, "prefix");
        Objects.requireNonNull(group, "group");
        Objects.requireNonNull(artifact, "artifact");
        Objects.requireNonNull(title, "title");
    }

    /** Returns all that are known. */
    static List<Work> all() throws IOException {
        try (InputStream content = Objects.requireNonNull(Work.class.getResourceAsStream(FILE), FILE)) {
            return new String(content.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(Work::of)
                    .toList();
        }
    }

    private static Work of(String line) {
        String[] parts = line.split("\\|", -1);
        if (parts.length != PARTS) {
            throw new IllegalArgumentException("works.txt: " + line);
        }
        return new Work(parts[0], parts[1], parts[2], parts[3]);
    }

    /** Returns the one that fits a bundle's name best. */
    static Optional<Work> of(String bundle, List<Work> works) {
        return works.stream()
                .filter(work -> work.prefix.endsWith(".") ? bundle.startsWith(work.prefix) : work.fits(bundle))
                .max(Comparator.comparingInt(work -> work.prefix.length()));
    }

    private boolean fits(String bundle) {
        return bundle.equals(prefix) || artifact.equals("=") && bundle.startsWith(prefix + ".");
    }

    /** Returns the name of a bundle in Maven's repository. */
    String artifactOf(String bundle) {
        return artifact.equals("=") ? bundle : artifact;
    }
}
