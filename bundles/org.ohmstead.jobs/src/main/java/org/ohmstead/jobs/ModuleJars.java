// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;

/**
 * Modules that lie as jars in a folder, as bundles of the framework. They are marked, so that the workbench and the command line know each
 * other's, and both can see which jar a bundle came from.
 */
public final class ModuleJars {
    /** Name of a folder of modules, in the installation and in the user's folder. */
    public static final String FOLDER = "plugins-extra";

    private static final String MARK = "ohmstead-module:";

    private ModuleJars() {}

    /**
     * Returns the jars in a folder by their names; none when the folder is not there.
     *
     * @throws IOException when it cannot be listed
     */
    public static List<Path> in(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.getFileName().toString().endsWith(".jar"))
                    .sorted()
                    .toList();
        }
    }

    /** Returns the jar that a bundle was installed from by {@link #install}; empty for every other bundle. */
    public static Optional<Path> jar(Bundle bundle) {
        String location = bundle.getLocation();
        return location.startsWith(MARK)
                ? Optional.of(Path.of(URI.create(location.substring(MARK.length()))))
                : Optional.empty();
    }

    /**
     * Returns the bundle of a jar: installed anew, brought up to date when the jar is newer, or as it is.
     *
     * @throws BundleException when the framework refuses it
     * @throws IOException when the jar cannot be read
     */
    public static Bundle install(Path jar, BundleContext context) throws BundleException, IOException {
        String location = MARK + jar.toUri();
        Bundle there = context.getBundle(location);
        if (there != null && Files.getLastModifiedTime(jar).toMillis() <= there.getLastModified()) {
            return there;
        }
        try (InputStream content = Files.newInputStream(jar)) {
            if (there == null) {
                return context.installBundle(location, content);
            }
            there.update(content);
            return there;
        }
    }
}
