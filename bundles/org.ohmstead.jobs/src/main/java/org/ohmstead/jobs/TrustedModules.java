// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * The modules that this user said yes to, each by the hash of its whole file: a changed jar is another module, and is asked about anew.
 * They stand in a file of the user's state, one a line.
 */
public final class TrustedModules {
    /** Name of the file. */
    public static final String FILE = "trusted-modules";

    private static final System.Logger LOGGER = System.getLogger(TrustedModules.class.getName());

    private final Path file;

    /** Makes the list that lies in a folder of state. */
    public TrustedModules(Path stateFolder) {
        file = Objects.requireNonNull(stateFolder, "stateFolder").resolve(FILE);
    }

    /** Returns the list of whoever runs this. */
    public static TrustedModules own() {
        return new TrustedModules(StateFolder.own());
    }

    /** Returns whether a module was confirmed and may still run. */
    public boolean trusts(ModuleFile module) {
        return module.refusal().isEmpty() && lines().stream().anyMatch(line -> isAbout(line, module));
    }

    /**
     * Remembers a yes.
     *
     * @throws IOException when it cannot be kept
     */
    public void trust(ModuleFile module) throws IOException {
        if (!module.refusal().isEmpty()) {
            throw new IllegalArgumentException(module.refusal());
        }
        if (trusts(module)) {
            return;
        }
        List<String> lines = new ArrayList<>(lines());
        lines.add(module.sha256() + " " + module.name());
        Path folder = file.getParent();
        Files.createDirectories(folder);
        // Only the user can read a temporary file, so that nobody else learns or changes what runs with the user's
        // rights.
        Path fresh = Files.createTempFile(folder, FILE, ".new");
        try {
            Files.write(fresh, lines, StandardCharsets.UTF_8);
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    private static boolean isAbout(String line, ModuleFile module) {
        return line.equals(module.sha256()) || line.startsWith(module.sha256() + " ");
    }

    private List<String> lines() {
        if (!Files.isRegularFile(file)) {
            return List.of();
        }
        try {
            return Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            LOGGER.log(
                    System.Logger.Level.WARNING,
                    "The list of trusted modules " + file + " cannot be read.",
                    unreadable);
            return List.of();
        }
    }
}
