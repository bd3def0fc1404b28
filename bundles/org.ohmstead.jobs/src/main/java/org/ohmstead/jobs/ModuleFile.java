// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Objects;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.Manifest;
import org.ohmstead.units.text.Messages;

/**
 * What a person sees of a module before it may run.
 *
 * @param jar where it lies
 * @param symbolicName of the module; empty when the jar is none
 * @param version as its manifest has it; "0.0.0" where it has none
 * @param sha256 hash of the whole file, 64 hexadecimal digits
 * @param signature who vouches for it
 */
public record ModuleFile(Path jar, String symbolicName, String version, String sha256, JarSignature signature) {
    private static final Messages TEXTS = Messages.of(ModuleFile.class);
    private static final String NAME = "Bundle-SymbolicName";
    private static final String VERSION = "Bundle-Version";

    /** What the framework takes for a name; anything else could feign lines or names where it is shown. */
    private static final String NAME_FORM = "[A-Za-z0-9_.-]{1,200}";

    private static final String VERSION_FORM = "[A-Za-z0-9_.-]{1,80}";

    public ModuleFile {
        Objects.requireNonNull(jar, "jar");
        Objects.requireNonNull(symbolicName, "symbolicName");
        Objects.requireNonNull(version, "version");
        Objects.requireNonNull(signature, "signature");
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("sha256 is " + sha256);
        }
    }

    /**
     * Looks at a jar without running anything of it.
     *
     * @throws IOException when it is no jar or cannot be read
     */
    public static ModuleFile read(Path jar) throws IOException {
        if (!Files.isRegularFile(jar)) {
            throw new IOException(TEXTS.text("module.noFile", jar));
        }
        String hash = hash(jar);
        Attributes headers;
        try (JarFile file = new JarFile(jar.toFile(), false)) {
            Manifest manifest = file.getManifest();
            headers = manifest == null ? new Attributes() : manifest.getMainAttributes();
        }
        String name = Objects.requireNonNullElse(headers.getValue(NAME), "");
        String bare = (name.contains(";") ? name.substring(0, name.indexOf(';')) : name).strip();
        String version =
                Objects.requireNonNullElse(headers.getValue(VERSION), "0.0.0").strip();
        return new ModuleFile(
                jar,
                bare.matches(NAME_FORM) ? bare : "",
                version.matches(VERSION_FORM) ? version : "?",
                hash,
                JarSignature.of(jar));
    }

    private static String hash(Path jar) throws IOException {
        MessageDigest digest = JarSignature.sha256();
        try (InputStream content = new DigestInputStream(Files.newInputStream(jar), digest)) {
            content.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** Returns the name of the module with its version, or of the file when it is no module. */
    public String name() {
        return symbolicName.isEmpty() ? jar.getFileName().toString() : symbolicName + " " + version;
    }

    /** Says in lines what it is: module, file, SHA-256, signature. */
    public String description() {
        return TEXTS.text("module.description", name(), jar, sha256, signature.words());
    }

    /** Returns why it may not run whoever confirms it, in a sentence; empty when it may. */
    public String refusal() {
        if (symbolicName.isEmpty()) {
            return TEXTS.text("module.none");
        }
        return signature.kind() == JarSignature.Kind.BROKEN ? TEXTS.text("module.broken", signature.signer()) : "";
    }
}
