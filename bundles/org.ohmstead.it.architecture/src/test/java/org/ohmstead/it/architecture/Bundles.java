// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.it.architecture;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import java.util.stream.Stream;

/** Where the bundles of this checkout lie, and how their manifests are read. */
final class Bundles {
    private Bundles() {}

    /** Returns the checkout's top folder; tests start in their bundle's. */
    static Path root() {
        return Path.of("").toAbsolutePath().getParent().getParent();
    }

    static List<Path> all() throws IOException {
        try (Stream<Path> folders = Files.list(root().resolve("bundles"))) {
            return folders.filter(folder -> Files.exists(folder.resolve("META-INF/MANIFEST.MF")))
                    .sorted()
                    .toList();
        }
    }

    static Attributes manifest(Path bundle) throws IOException {
        try (InputStream in = Files.newInputStream(bundle.resolve("META-INF/MANIFEST.MF"))) {
            return new Manifest(in).getMainAttributes();
        }
    }

    /** Returns the clauses of a manifest header; commas inside quotes do not part them. */
    static List<String> clauses(String header) {
        List<String> clauses = new ArrayList<>();
        if (header == null) {
            return clauses;
        }
        StringBuilder clause = new StringBuilder();
        boolean quoted = false;
        for (char c : header.toCharArray()) {
            quoted ^= c == '"';
            if (c == ',' && !quoted) {
                clauses.add(clause.toString().strip());
                clause.setLength(0);
            } else {
                clause.append(c);
            }
        }
        clauses.add(clause.toString().strip());
        return clauses;
    }
}
