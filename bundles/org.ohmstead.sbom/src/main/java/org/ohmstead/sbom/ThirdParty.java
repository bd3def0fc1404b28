// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.sbom;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A row of the list of third-party software that people read.
 *
 * @param work its name, with what stands in brackets or after a comma
 * @param version as it stands there
 * @param licence as it stands there
 */
record ThirdParty(String work, String version, String licence) {
    private static final int CELLS = 5;

    ThirdParty {
        Objects.requireNonNull(work, "work");
        Objects.requireNonNull(version, "version");
        Objects.requireNonNull(licence, "licence");
    }

    /** Reads the rows of the list. */
    static List<ThirdParty> read(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.UTF_8)
                .lines()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| ---") && !line.startsWith("| Work "))
                .map(line -> line.split("\\|"))
                .filter(cells -> cells.length == CELLS)
                .map(cells -> new ThirdParty(cells[1].strip(), cells[2].strip(), cells[3].strip()))
                .toList();
    }

    /** Returns the row about a work. */
    static Optional<ThirdParty> about(String title, List<ThirdParty> rows) {
        return rows.stream().filter(row -> row.isAbout(title)).findFirst();
    }

    boolean isAbout(String title) {
        return work.equals(title) || work.startsWith(title + " ");
    }

    /** Returns whether the version that is shipped is the one that the row names; a row may name a whole release of many parts. */
    boolean covers(String shipped) {
        return version.contains("(")
                || version.endsWith(".x")
                || numbers(shipped).equals(numbers(version))
                || begins(shipped);
    }

    /** A row such as that of Jackson leaves the last digit to its parts. */
    private boolean begins(String shipped) {
        return version.split("\\.").length == 2 && shipped.startsWith(version + ".");
    }

    /** Compares 1.3.04 with 1.3.4 and 78.1 with 78.1.0. */
    private static List<Integer> numbers(String version) {
        String[] parts = (version + ".0.0").split("\\.");
        return List.of(number(parts[0]), number(parts[1]), number(parts[2]));
    }

    private static int number(String part) {
        return part.matches("[0-9]{1,9}") ? Integer.parseInt(part) : -1;
    }
}
