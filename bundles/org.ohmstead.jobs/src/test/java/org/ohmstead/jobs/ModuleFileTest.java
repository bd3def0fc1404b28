// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.zip.ZipFile;
import jdk.security.jarsigner.JarSigner;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ModuleFileTest {
    private static final String PASSWORD = "for-this-test";

    @TempDir
    Path folder;

    private Path jar(String file, String name) throws IOException {
        Manifest manifest = new Manifest();
        Attributes headers = manifest.getMainAttributes();
        headers.put(Attributes.Name.MANIFEST_VERSION, "1.0");
        if (!name.isEmpty()) {
            headers.putValue("Bundle-SymbolicName", name);
            headers.putValue("Bundle-Version", "1.2.3");
        }
        Path jar = folder.resolve(file);
        try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar), manifest)) {
            for (String entry : new String[] {"org/example/One.class", "org/example/Two.class"}) {
                out.putNextEntry(new JarEntry(entry));
                out.write(entry.getBytes(StandardCharsets.UTF_8));
                out.closeEntry();
            }
        }
        return jar;
    }

    private KeyStore.PrivateKeyEntry key(String who) throws Exception {
        Path store = folder.resolve(who + ".p12");
        Process made = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-keyalg",
                        "EC",
                        "-alias",
                        "own",
                        "-dname",
                        "CN=" + who,
                        "-keystore",
                        store.toString(),
                        "-storepass",
                        PASSWORD)
                .redirectErrorStream(true)
                .start();
        String said = new String(made.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(made.waitFor(1, TimeUnit.MINUTES) && made.exitValue() == 0, said);
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream content = Files.newInputStream(store)) {
            keys.load(content, PASSWORD.toCharArray());
        }
        return (KeyStore.PrivateKeyEntry) keys.getEntry("own", new KeyStore.PasswordProtection(PASSWORD.toCharArray()));
    }

    private Path signed(Path jar, KeyStore.PrivateKeyEntry key) throws IOException {
        Path signed = folder.resolve("signed-" + jar.getFileName());
        try (ZipFile plain = new ZipFile(jar.toFile());
                OutputStream out = Files.newOutputStream(signed)) {
            new JarSigner.Builder(key).build().sign(plain, out);
        }
        return signed;
    }

    private static void write(Path jar, String entry, String content) throws IOException {
        try (FileSystem inside = FileSystems.newFileSystem(jar, Map.of())) {
            Files.writeString(inside.getPath(entry), content);
        }
    }

    @Test
    void nameVersionHashAndThatNobodySignedItAreSaid() throws Exception {
        Path jar = jar("plain.jar", "org.example.plain; singleton:=true");
        ModuleFile module = ModuleFile.read(jar);
        assertEquals("org.example.plain 1.2.3", module.name());
        String hash =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar)));
        assertEquals(hash, module.sha256());
        assertEquals(
                "Module: org.example.plain 1.2.3\nFile: " + jar + "\nSHA-256: " + hash + "\nSignature: not signed",
                module.description());
        assertEquals("", module.refusal());
    }

    @Test
    void aSignatureThatHoldsNamesItsSigner() throws Exception {
        ModuleFile module = ModuleFile.read(signed(jar("good.jar", "org.example.good"), key("Workshop")));
        assertEquals(JarSignature.Kind.SIGNED, module.signature().kind());
        assertTrue(module.signature().signer().matches("CN=Workshop \\(SHA-256 [0-9a-f]{64}\\)"), module.toString());
        assertEquals("", module.refusal());
    }

    @Test
    void aChangedAnAddedAndADoublySignedPartAreRefused() throws Exception {
        Path changed = signed(jar("changed.jar", "org.example.changed"), key("Workshop"));
        write(changed, "org/example/Two.class", "something else");
        Path added = signed(jar("added.jar", "org.example.added"), key("Workbench"));
        write(added, "org/example/Three.class", "more");
        for (Path jar : new Path[] {changed, added}) {
            ModuleFile module = ModuleFile.read(jar);
            assertEquals(JarSignature.Kind.BROKEN, module.signature().kind(), jar.toString());
            assertTrue(module.refusal().contains("changed after it had been signed"), module.refusal());
            TrustedModules trusted = new TrustedModules(folder.resolve("state"));
            assertThrows(IllegalArgumentException.class, () -> trusted.trust(module));
            // Not even a line that somebody wrote by hand lets it run.
            Files.createDirectories(folder.resolve("state"));
            Files.writeString(folder.resolve("state").resolve(TrustedModules.FILE), module.sha256() + "\n");
            assertFalse(trusted.trusts(module));
        }
    }

    @Test
    void whatIsNoModuleOrNoFileIsSaid() throws Exception {
        assertTrue(ModuleFile.read(jar("none.jar", "")).refusal().contains("Bundle-SymbolicName"));
        assertTrue(ModuleFile.read(jar("odd.jar", "org.example\u001b[2J"))
                .refusal()
                .contains("Bundle-SymbolicName"));
        assertThrows(IOException.class, () -> ModuleFile.read(folder));
        Path text = Files.writeString(folder.resolve("text.jar"), "not a jar");
        assertThrows(IOException.class, () -> ModuleFile.read(text));
    }

    @Test
    void aYesIsKeptForTheContentAndForNothingElse() throws Exception {
        Path jar = jar("plain.jar", "org.example.plain");
        TrustedModules trusted = new TrustedModules(folder.resolve("state"));
        ModuleFile module = ModuleFile.read(jar);
        assertFalse(trusted.trusts(module));
        trusted.trust(module);
        trusted.trust(module);
        assertTrue(new TrustedModules(folder.resolve("state")).trusts(module));
        Path list = folder.resolve("state").resolve(TrustedModules.FILE);
        assertEquals(module.sha256() + " org.example.plain 1.2.3\n", Files.readString(list));
        if (list.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(list)));
        }
        Path moved = Files.copy(jar, folder.resolve("moved.jar"));
        assertTrue(trusted.trusts(ModuleFile.read(moved)), "the same content elsewhere");
        write(jar, "org/example/Two.class", "something else");
        assertFalse(trusted.trusts(ModuleFile.read(jar)), "another content in its place");
    }
}
