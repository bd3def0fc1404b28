// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.util.Base64;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assertions;

/**
 * A self-signed certificate, made by the JDK's keytool.
 *
 * @param certificate in PEM
 * @param key in PEM
 */
record Certificate(Path certificate, Path key) {
    private static final String STORE_PASSWORD = "of this test";
    private static final String ALIAS = "server";

    /** Makes one in a folder, for some names as keytool wants them, such as {@code dns:localhost}. */
    static Certificate make(Path folder, String name, String alternativeNames)
            throws IOException, InterruptedException, GeneralSecurityException {
        Path store = folder.resolve(name + ".p12");
        Path log = folder.resolve(name + ".log");
        Process keytool = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        ALIAS,
                        "-keyalg",
                        "EC",
                        "-groupname",
                        "secp256r1",
                        "-dname",
                        "CN=" + name,
                        "-ext",
                        "san=" + alternativeNames,
                        "-validity",
                        "2",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        store.toString(),
                        "-storepass",
                        STORE_PASSWORD)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        Assertions.assertTrue(keytool.waitFor(60, TimeUnit.SECONDS) && keytool.exitValue() == 0, Files.readString(log));
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(store)) {
            keys.load(in, STORE_PASSWORD.toCharArray());
        }
        return new Certificate(
                pem(
                        folder.resolve(name + ".crt"),
                        "CERTIFICATE",
                        keys.getCertificate(ALIAS).getEncoded()),
                pem(
                        folder.resolve(name + ".key"),
                        "PRIVATE KEY",
                        keys.getKey(ALIAS, STORE_PASSWORD.toCharArray()).getEncoded()));
    }

    /** Deletes the files and the folder that they are in. */
    void delete() throws IOException {
        try (Stream<Path> files = Files.list(certificate.getParent())) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(certificate.getParent());
    }

    private static Path pem(Path file, String what, byte[] bytes) throws IOException {
        String text = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(bytes);
        return Files.writeString(file, "-----BEGIN " + what + "-----\n" + text + "\n-----END " + what + "-----\n");
    }
}
