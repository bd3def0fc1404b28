// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.jobs;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.security.CodeSigner;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.cert.Certificate;
import java.security.cert.CertificateEncodingException;
import java.security.cert.X509Certificate;
import java.util.Enumeration;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.ohmstead.units.text.Messages;

/**
 * Who signed a jar. Ohmstead keeps no list of issuers: it says which certificate the signature fits, and whether it fits, and leaves it
 * to the user whom to trust.
 *
 * @param kind whether there is a signature that holds
 * @param signer subject of the certificate with its fingerprint; empty where there is none
 */
public record JarSignature(Kind kind, String signer) {
    /** What there is of a signature. */
    public enum Kind {
        /** Nobody signed it. */
        NONE,
        /** Every file in it is as its signer signed it. */
        SIGNED,
        /** It was signed, and changed afterwards, or only in part, or in a way that is no longer taken for safe. */
        BROKEN
    }

    private static final Messages TEXTS = Messages.of(JarSignature.class);
    private static final String META = "META-INF/";
    private static final int BUFFER = 1 << 16;

    /** A jar that holds more than this, unpacked, is not a module but an attack on the memory of whoever looks at it. */
    private static final long MOST_BYTES = 2L << 30;

    public JarSignature {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(signer, "signer");
    }

    /**
     * Checks the signature of a jar.
     *
     * @throws IOException when the jar cannot be read
     */
    static JarSignature of(Path jar) throws IOException {
        if (!isSigned(jar)) {
            return new JarSignature(Kind.NONE, "");
        }
        Set<String> signers = new TreeSet<>();
        boolean whole = true;
        try (JarFile file = new JarFile(jar.toFile(), true)) {
            long left = MOST_BYTES;
            for (Enumeration<JarEntry> entries = file.entries(); entries.hasMoreElements(); ) {
                JarEntry entry = entries.nextElement();
                left -= readThrough(file, entry, left);
                if (entry.isDirectory() || isOfSignature(entry.getName())) {
                    continue;
                }
                Optional<String> signer = signer(entry.getCodeSigners());
                whole &= signer.isPresent();
                signer.ifPresent(signers::add);
            }
        } catch (SecurityException changed) {
            whole = false;
        }
        // Parts that different people signed are what an attacker makes of two modules.
        boolean holds = whole && signers.size() == 1;
        return new JarSignature(holds ? Kind.SIGNED : Kind.BROKEN, String.join(", ", signers));
    }

    private static boolean isSigned(Path jar) throws IOException {
        try (JarFile file = new JarFile(jar.toFile(), false)) {
            return file.stream().anyMatch(entry -> {
                String name = entry.getName().toUpperCase(Locale.ROOT);
                return name.endsWith(".SF") && isOfSignature(name);
            });
        }
    }

    /** What the signature itself consists of, which it cannot cover. */
    private static boolean isOfSignature(String entry) {
        String name = entry.toUpperCase(Locale.ROOT);
        String own = name.startsWith(META) ? name.substring(META.length()) : "/";
        return !own.contains("/")
                && (own.equals("MANIFEST.MF")
                        || own.startsWith("SIG-")
                        || own.endsWith(".SF")
                        || own.endsWith(".RSA")
                        || own.endsWith(".DSA")
                        || own.endsWith(".EC"));
    }

    /** An entry's signer is known when all of it was read. */
    private static long readThrough(JarFile file, JarEntry entry, long most) throws IOException {
        byte[] buffer = new byte[BUFFER];
        long read = 0;
        try (InputStream content = file.getInputStream(entry)) {
            for (int count = content.read(buffer); count >= 0; count = content.read(buffer)) {
                read += count;
                if (read > most) {
                    throw new IOException(TEXTS.text("module.large"));
                }
            }
        }
        return read;
    }

    private static Optional<String> signer(CodeSigner[] signers) {
        if (signers == null || signers.length == 0) {
            return Optional.empty();
        }
        Certificate first = signers[0].getSignerCertPath().getCertificates().get(0);
        if (!(first instanceof X509Certificate certificate)) {
            return Optional.empty();
        }
        try {
            String print = HexFormat.of().formatHex(sha256().digest(certificate.getEncoded()));
            return Optional.of(certificate.getSubjectX500Principal().getName() + " (SHA-256 " + print + ")");
        } catch (CertificateEncodingException odd) {
            return Optional.empty();
        }
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException("every Java has SHA-256", never);
        }
    }

    /** Says it in words. */
    public String words() {
        return TEXTS.text("signature." + kind, signer);
    }
}
