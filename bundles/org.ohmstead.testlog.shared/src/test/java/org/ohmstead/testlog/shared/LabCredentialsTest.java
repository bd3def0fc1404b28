// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.shared;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ohmstead.testlog.shared.SharedLabException.Reason;

class LabCredentialsTest {
    private static final LabAddress ADDRESS = new LabAddress("lab.example", 5432, "ohm", Optional.empty());

    @TempDir
    Path home;

    private Path file(String name, String text) throws IOException {
        Path file = Files.writeString(home.resolve(name), text);
        if (Files.getFileStore(file).supportsFileAttributeView("posix")) {
            Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        }
        return file;
    }

    private LabCredentials find(Map<String, String> environment) throws SharedLabException {
        return LabCredentials.find(ADDRESS, environment, home);
    }

    private String refused(Map<String, String> environment) {
        SharedLabException failure = assertThrows(SharedLabException.class, () -> find(environment));
        assertEquals(Reason.CREDENTIALS, failure.reason());
        return failure.getMessage();
    }

    @Test
    void theEnvironmentComesFirst() throws Exception {
        file(".pgpass", "*:*:*:ann:from the file");
        LabCredentials found = find(Map.of("OHMSTEAD_LOG_USER", "ann", "OHMSTEAD_LOG_PASSWORD", "se:cr\\et"));
        assertEquals("ann", found.user());
        assertEquals(Optional.of("se:cr\\et"), found.password());
        assertEquals("ann (the environment)", found.toString(), "without the password");
    }

    @Test
    void aPasswordWithoutAUserIsRefused() {
        assertTrue(refused(Map.of("OHMSTEAD_LOG_PASSWORD", "x")).contains("OHMSTEAD_LOG_USER"));
    }

    @Test
    void aUserWithoutAPasswordMayDo() throws Exception {
        assertEquals(Optional.empty(), find(Map.of("OHMSTEAD_LOG_USER", "ann")).password());
    }

    @Test
    void withoutAnythingItSaysWhatToDo() {
        assertTrue(refused(Map.of()).contains(".pgpass"));
    }

    // PostgreSQL documentation, libpq, "The Password File": order, star, backslash, first that fits, comments.
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lab.example:5432:ohm:ann:plain | ann | plain",
                "*:*:*:ann:stars | ann | stars",
                "lab.example:5432:ohm:ann:first\\nlab.example:5432:ohm:ann:second | ann | first",
                "#lab.example:5432:ohm:ann:comment\\nlab.example:5432:ohm:ann:real | ann | real",
                "other.example:*:*:ann:no\\n"
                        + "*:5433:*:ann:no\\n"
                        + "*:*:other:ann:no\\n"
                        + "*:*:*:bob:no\\n"
                        + "*:*:*:*:yes | ann | yes",
                "*:*:*:ann:co\\:lon and back\\\\slash | ann | co:lon and back\\slash",
                "*:*:*:ann:ends here:not this | ann | ends here",
                "*:*:*:ann:* | ann | *",
                "*:*:*:an\\:n:x | an:n | x",
                "lab.example:5432:ohm:ann\\n*:*:*:ann:short lines do not count | ann | short lines do not count",
            })
    void readsPasswordFilesAsPostgresqlDescribesThem(String lines, String user, String password) throws Exception {
        file(".pgpass", lines.replace("\\n", "\n"));
        LabCredentials found = find(Map.of("OHMSTEAD_LOG_USER", user));
        assertEquals(user, found.user());
        assertEquals(Optional.of(password), found.password());
        assertFalse(found.toString().contains(password) && password.length() > 1, found.toString());
    }

    @Test
    void anEscapedStarIsNoStar() throws Exception {
        file(".pgpass", "\\*:*:*:ann:x");
        assertEquals(Optional.empty(), find(Map.of("OHMSTEAD_LOG_USER", "ann")).password());
    }

    @Test
    void withoutAUserTheFirstLineThatNamesOneCounts() throws Exception {
        file(".pgpass", "other:*:*:bob:x\n*:*:*:*:nobody in particular\nlab.example:*:*:ann:hers\n");
        LabCredentials found = find(Map.of());
        assertEquals("ann", found.user());
        assertEquals(Optional.of("hers"), found.password());
    }

    @Test
    void namedFilesComeBeforeTheOneAtHome() throws Exception {
        file(".pgpass", "*:*:*:ann:home");
        Path second = file("second", "*:*:*:ann:second");
        Path third = file("third", "*:*:*:ann:third");
        Map<String, String> both = Map.of("PGPASSFILE", second.toString(), "OHMSTEAD_LOG_PASSFILE", third.toString());
        assertEquals(Optional.of("third"), find(both).password());
        assertEquals(
                Optional.of("second"),
                find(Map.of("PGPASSFILE", second.toString())).password());
        assertEquals(Optional.of("home"), find(Map.of()).password());
        assertTrue(refused(Map.of("OHMSTEAD_LOG_PASSFILE", home.resolve("none").toString()))
                .contains("is not there"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-r-----", "rw----r--", "rw-rw-rw-", "rw--w----", "rw------x"})
    void aFileThatOthersMayUseIsNotRead(String permissions) throws Exception {
        Path file = file(".pgpass", "*:*:*:ann:secret of hers");
        assumeTrue(Files.getFileStore(file).supportsFileAttributeView("posix"), "needs POSIX permissions");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
        String message = refused(Map.of("OHMSTEAD_LOG_USER", "ann"));
        assertTrue(message.contains(permissions) && message.contains("chmod 600"), message);
        assertFalse(message.contains("secret of hers"), message);
    }

    @Test
    void aPasswordThatIsForOneServerGoesToNoOther() throws Exception {
        Map<String, String> login = Map.of("OHMSTEAD_LOG_USER", "ann", "OHMSTEAD_LOG_PASSWORD", "secret");
        for (String own : new String[] {"lab.example", "LAB.example:5432"}) {
            Map<String, String> bound = new HashMap<>(login);
            bound.put("OHMSTEAD_LOG_SERVER", own);
            assertEquals(Optional.of("secret"), find(bound).password());
        }
        for (String other : new String[] {"other.example", "lab.example:5433", "example"}) {
            Map<String, String> bound = new HashMap<>(login);
            bound.put("OHMSTEAD_LOG_SERVER", other);
            String message = refused(bound);
            assertTrue(message.contains(other) && message.contains("was not sent"), message);
            assertFalse(message.contains("secret"), message);
        }
    }
}
