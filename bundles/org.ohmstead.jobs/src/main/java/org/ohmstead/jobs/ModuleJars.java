// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ohmstead.units.text.Messages;
import org.osgi.framework.Bundle;
import org.osgi.framework.BundleContext;
import org.osgi.framework.BundleException;

/**
 * Modules that lie as jars in a folder, as bundles of the framework. They are marked, so that the workbench and the command line know each
 * other's, and both can see which jar a bundle came from, and which content of it.
 */
public final class ModuleJars {
    /** Name of a folder of modules, in the installation and in the user's folder. */
    public static final String FOLDER = "plugins-extra";

    private static final String MARK = "ohmstead-module:";

    private static final Messages TEXTS = Messages.of(ModuleJars.class);

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
                ? Optional.of(Path.of(URI.create(location.substring(location.indexOf("file:")))))
                : Optional.empty();
    }

    /** Returns whether a bundle was installed from just this content of just this jar. */
    public static boolean isFrom(Bundle bundle, ModuleFile module) {
        return bundle.getLocation().equals(location(module));
    }

    /**
     * Returns the bundle of a module: as it is when it was installed from the same content before, else installed anew. Somebody must have
     * said yes to it.
     *
     * @throws BundleException when the framework refuses it, or the file is no longer what was looked at
     * @throws IOException when the jar cannot be read
     */
    public static Bundle install(ModuleFile module, BundleContext context) throws BundleException, IOException {
        Bundle there = context.getBundle(location(module));
        if (there != null) {
            return there;
        }
        // What runs is what was looked at, and not what somebody laid there since.
        MessageDigest digest = JarSignature.sha256();
        Bundle bundle;
        try (InputStream content = new DigestInputStream(Files.newInputStream(module.jar()), digest)) {
            bundle = context.installBundle(location(module), new ByteArrayInputStream(content.readAllBytes()));
        }
        if (!HexFormat.of().formatHex(digest.digest()).equals(module.sha256())) {
            bundle.uninstall();
            throw new BundleException(TEXTS.text("module.changed"), BundleException.SECURITY_ERROR);
        }
        return bundle;
    }

    private static String location(ModuleFile module) {
        return MARK + module.sha256() + ":" + module.jar().toUri();
    }
}
